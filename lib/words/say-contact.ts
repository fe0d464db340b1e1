import type { ContactChange, ContactSpan } from "@/lib/verdict/contact-share";
import type { Words } from "./catalogue";
import { sayDay, sayStretch } from "./day-words";
import { sayNumber } from "./number-words";

/** From where to where the share of solid strikes went, and in which days: “about 41 to about 63 of 100, 3–17 May”. */
export function sayContactChange(words: Words, change: ContactChange): string {
  const hundred = (share: number): string => sayNumber(words, Math.round(100 * share), 0);
  return words.say("contact.change", {
    before: hundred(change.before.estimate),
    after: hundred(change.after.estimate),
    stretch: sayStretch(words, change.from, change.to),
  });
}

/** Over how many sessions balls were counted, and since when. */
export function sayContactSpan(words: Words, span: ContactSpan): string {
  return words.say("contact.span", { sessions: span.sessions, day: sayDay(words, span.from, "short") });
}
