import type { IncomingMessage } from "node:http";
import { type Words, wordsFor } from "@/lib/words/catalogue";
import { wishIn } from "../viewer";

/** The words of whoever sent a request that no page has seen yet. */
export function wordsAsked(request: IncomingMessage): Words {
  const pairs = (request.headers.cookie ?? "").split(/; */).map((pair) => pair.split("=", 2));
  const get = (name: string) => {
    const value = pairs.find(([each]) => each === name)?.[1];
    return value === undefined ? undefined : { value };
  };
  return wordsFor(wishIn({ get }).locale ?? "en");
}
