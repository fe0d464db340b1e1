import type { Words } from "@/lib/words/catalogue";
import { NOTHING_SAID, type Said } from "./small-form";

const OF_FRESH = new Set(["short", "long", "common", "personal", "monotone"]);
const OF_CURRENT = new Set(["wrong", "code"]);
const WAIT = /^wait-(\d{1,5})$/;

/** Says why a press changed nothing, from the word in the page's address; an unknown word says nothing. */
export function sayWhy(
  words: Words,
  why: string | undefined,
  fields: { readonly current: string; readonly fresh?: string },
): Said {
  if (why === undefined) return NOTHING_SAID;
  const seconds = WAIT.exec(why)?.[1];
  if (seconds !== undefined)
    return { refusal: words.say("sign-in.refused.wait", { seconds: Number(seconds) }), errors: {} };
  const refusal = words.say("people.refusal");
  if (OF_FRESH.has(why) && fields.fresh !== undefined)
    return { refusal, errors: { [fields.fresh]: words.say(`account.password.${why}`) } };
  if (OF_CURRENT.has(why)) return { refusal, errors: { [fields.current]: words.say(`account.why.${why}`) } };
  const key = `people.why.${why}`;
  return words.has(key) ? { refusal: words.say(key), errors: {} } : NOTHING_SAID;
}
