import type { Words } from "@/lib/words/catalogue";
import { type Refusal, refusalPage } from "./refusal-page";

/** Most that is read of an address with its cookies and other headers, in kB: what Node reads, 16 KiB. */
const HEADER_KB = 16;
/** Most that a form may hold, in MB; next.config.mjs has the same for what its actions read. */
export const FORM_LIMIT_MB = 2;

/** What is said last of each status; the others are failures of ours. */
const NEXT: Readonly<Record<number, string>> = {
  400: "refusal.again",
  404: "refusal.first-page",
  408: "refusal.again",
  413: "refusal.413.next",
  429: "refusal.again",
  431: "refusal.first-page",
};

function refusalOf(words: Words, status: number, seconds: number): Refusal {
  if (status === 405)
    return {
      title: words.say("refusal.method.title"),
      happened: words.say("refusal.method.happened"),
      next: words.say("refusal.first-page"),
    };
  const next = NEXT[status];
  if (next === undefined)
    return {
      title: words.say("failure.title"),
      happened: words.say("failure.happened"),
      next: words.say("failure.next"),
    };
  const args = { seconds, limit: status === 413 ? FORM_LIMIT_MB : HEADER_KB };
  return {
    title: words.say(`refusal.${status}.title`),
    happened: words.say(`refusal.${status}.happened`, args),
    next: words.say(next),
  };
}

/** A whole page in our words for a status that says nothing itself. */
export function sayStatus(words: Words, status: number, seconds = 1): string {
  return refusalPage(words, refusalOf(words, status, seconds));
}
