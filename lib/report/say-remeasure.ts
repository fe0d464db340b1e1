import { dayNumber } from "@/lib/domain/calendar-day";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";

/** When a drill that runs is measured again, and how far away that is. */
export function sayRemeasure(
  words: Words,
  remeasureOn: string | null,
  today: string,
  style: "short" | "with-weekday" = "with-weekday",
): string {
  if (remeasureOn === null) return words.say("drill.remeasure.none");
  const ahead = dayNumber(remeasureOn) - dayNumber(today);
  return words.say("drill.remeasure", {
    day: sayDay(words, remeasureOn, style),
    when: ahead > 0 ? "ahead" : ahead === 0 ? "today" : "over",
    days: Math.abs(ahead),
  });
}
