import type { DrillAssignment } from "@/lib/domain/student";
import type { Words } from "./catalogue";
import { minutesInDose } from "./minutes-in-dose";

/** What a dose is said from. */
export type SaidDose = Pick<DrillAssignment, "dose" | "reps" | "minutesADay" | "daysAWeek" | "stopRule">;

/** A dose in one line: repeats and minutes, days a week, the coach's own words, and when to stop. What wasn't said is left out. */
export function sayDose(words: Words, said: SaidDose): string {
  const { reps = null, daysAWeek = null, stopRule = "" } = said;
  const own = minutesInDose(words, said);
  const numbers = [
    reps === null ? "" : words.say("dose.reps", { reps }),
    own.minutes === null ? "" : words.say("dose.minutes", { minutes: own.minutes }),
    daysAWeek === null ? "" : words.say("dose.days", { days: daysAWeek }),
  ].filter((part) => part !== "");
  const until = stopRule === "" ? "" : words.say("dose.until", { stop: stopRule });
  return [numbers.join(", "), own.words, until].filter((part) => part !== "").join("; ");
}
