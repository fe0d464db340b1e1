import type { Reach } from "@/lib/domain/track-verdict";
import type { Words } from "./catalogue";
import { sayDay } from "./day-words";
import { sayNumber } from "./number-words";

/**
 * When a gain lies inside its band at this pace, that it has stopped short, or why no date is said.
 *
 * @param lastFilm day of the last film that counts
 * @param today day on which it is read; dates before it are not said
 */
export function sayReach(words: Words, reach: Reach, lastFilm: string, today: string): string {
  if (reach.kind === "unsaid") return words.say(`reach.unsaid.${reach.why}`);
  if (reach.kind === "stopped-short")
    return words.say("reach.stopped-short", { chance: sayNumber(words, Math.floor(reach.chance * 100), 0) });
  const day = (of: string): string => sayDay(words, of, of.slice(0, 4) === today.slice(0, 4) ? "short" : "day-year");
  if (reach.to < today) return words.say("reach.passed", { day: day(lastFilm) });
  if (reach.from <= lastFilm || reach.from <= today) return words.say("reach.dates.by", { to: day(reach.to) });
  return words.say("reach.dates", { from: day(reach.from), to: day(reach.to) });
}
