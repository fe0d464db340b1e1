import type { ApartReason } from "@/lib/verdict/track-history";
import type { Words } from "./catalogue";
import { sayDay } from "./day-words";
import { sayNumber } from "./number-words";

/** Why a session stands apart from the judged ones. */
export function sayApart(words: Words, apart: ApartReason): string {
  switch (apart.kind) {
    case "before":
      return words.say("apart.before", { day: sayDay(words, apart.begins, "short") });
    case "circumstance":
      return apart.circumstance === "in-lesson"
        ? words.say("apart.in-lesson")
        : words.say("apart.aid-in-view", { aid: apart.aid ?? words.say("apart.some-aid") });
    case "camera":
      return words.say(`apart.camera.${apart.why}`, {
        amount: apart.offBy === null ? "" : sayNumber(words, Math.abs(apart.offBy), 0),
      });
    case "fingerprint":
      return words.say("apart.fingerprint", { amount: sayNumber(words, Math.abs(apart.offBy), 0) });
    case "set-aside":
      return words.say("apart.set-aside", { reason: apart.reason });
  }
}
