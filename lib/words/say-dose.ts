import type { DrillDose } from "@/lib/ingest/parse-drill-form";
import type { Words } from "./catalogue";

/** A dose in one line: repeats and minutes, days a week, the coach's own words, and when to stop. What wasn't said is left out. */
export function sayDose(words: Words, { reps, minutes, daysAWeek, words: own, stop }: DrillDose): string {
  const numbers = [
    reps === null ? "" : words.say("dose.reps", { reps }),
    minutes === null ? "" : words.say("dose.minutes", { minutes }),
    daysAWeek === null ? "" : words.say("dose.days", { days: daysAWeek }),
  ].filter((part) => part !== "");
  const until = stop === "" ? "" : words.say("dose.until", { stop });
  return [numbers.join(", "), own, until].filter((part) => part !== "").join("; ");
}
