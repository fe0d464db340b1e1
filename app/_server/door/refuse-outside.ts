import type { KeepAnswer } from "@/lib/report/keep-answer";
import type { Words } from "@/lib/words/catalogue";
import { refuseAtDoor } from "../import/door-answer";
import { noteWhy, referenceHere } from "./answering";
import { DOOR, METHODS } from "./origin";
import { refusalPage } from "./refusal-page";
import { sayStatus } from "./say-status";

/** Why the outermost door lets a request no further. */
export type OuterRefusal =
  /** It comes from no page of ours, or asks by a method that nothing answers; `address` is where Proofband is opened. */
  | { readonly kind: "foreign" | "method"; readonly address: string }
  /** Whoever asks for more than a person can look at. */
  | { readonly kind: "flood"; readonly seconds: number };

const STATUS = { foreign: 403, method: 405, flood: 429 } as const;

/** Where a page's script keeps what is typed, and reads the answer. */
const KEEPING = "/api/drafts";

function atDoor(words: Words, refusal: OuterRefusal): Response {
  if (refusal.kind === "method") return refuseAtDoor(words, "method");
  return refusal.kind === "flood"
    ? refuseAtDoor(words, "slow-down", { seconds: refusal.seconds })
    : refuseAtDoor(words, "foreign", { address: refusal.address });
}

function whileKeeping(words: Words, { kind }: OuterRefusal): Response {
  const said = words.say(kind === "flood" ? "draft.refused.flood" : `refusal.${kind}.happened`);
  const answer: KeepAnswer = { kind: "refused", said };
  return Response.json({ ...answer, reference: referenceHere() }, { status: STATUS[kind] });
}

function asPage(words: Words, refusal: OuterRefusal): Response {
  const { kind } = refusal;
  const page =
    kind === "flood"
      ? sayStatus(words, STATUS.flood, refusal.seconds)
      : refusalPage(words, {
          title: words.say(`refusal.${kind}.title`),
          happened: words.say(`refusal.${kind}.happened`),
          next: words.say("refusal.open", { address: refusal.address }),
        });
  return new Response(page, { status: STATUS[kind], headers: { "content-type": "text/html; charset=utf-8" } });
}

/**
 * The refusal of a request that goes no further than the outermost door: as data where a program or a page's script reads
 * the answer, else as a whole page.
 */
export function refuseOutside(words: Words, pathname: string, refusal: OuterRefusal): Response {
  const say = pathname.startsWith(DOOR) ? atDoor : pathname === KEEPING ? whileKeeping : asPage;
  const response = say(words, refusal);
  if (refusal.kind === "method") response.headers.set("allow", METHODS.join(", "));
  if (refusal.kind === "flood") response.headers.set("retry-after", String(refusal.seconds));
  noteWhy(refusal.kind);
  return response;
}
