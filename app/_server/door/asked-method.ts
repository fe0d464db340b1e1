import { headers } from "next/headers";

/** Bears the method of a request to where its page is made, which has no other way to learn it; set at the outermost door. */
export const METHOD_HEADER = "x-proofband-method";

/** Whether the request of this page reads it, and doesn't only ask whether it is there. */
export async function isRead(): Promise<boolean> {
  return ((await headers()).get(METHOD_HEADER) ?? "GET") === "GET";
}
