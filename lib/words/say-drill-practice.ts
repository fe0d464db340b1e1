import type { DrillPractice } from "@/lib/domain/drill-practice";
import type { Words } from "./catalogue";
import { sayStretch } from "./day-words";

/** Practice asked and logged in a few words, for a table that has a drill's days beside it: counts alone. */
export function sayDrillCounts(words: Words, counted: DrillPractice): string {
  const { asked, askedMinutes, practised, minutes, balls } = counted;
  const days = words.say(practised === 0 ? "drill-practice.nothing" : "drill-practice.days", { days: practised });
  return [
    asked === null ? days : words.say("drill-practice.of-asked", { days, asked }),
    ...(minutes === null
      ? []
      : [
          words.say("drill-practice.minutes", {
            minutes,
            asked: askedMinutes ?? 0,
            hasAsked: askedMinutes === null ? "no" : "yes",
          }),
        ]),
    ...(balls === null ? [] : [words.say("drill-practice.balls", { balls })]),
  ].join(", ");
}

/** The same with the days that it is of. */
export function sayDrillPractice(words: Words, counted: DrillPractice): string {
  return `${sayDrillCounts(words, counted)}, ${sayStretch(words, counted.from, counted.to)}`;
}
