import type { SaidPain } from "@/lib/domain/practice";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayPlace } from "@/lib/words/say-place";

/**
 * What a season's page says first when the family told of pain: the latest day, and on how many other days of the season.
 *
 * @param said by day, what stands alone; empty: nothing is said
 * @param seasonStart what was said before it is on the page of practice alone
 */
export function buildPainNotices(words: Words, said: readonly SaidPain[], seasonStart: string): readonly string[] {
  const season = said.filter(({ day }) => day >= seasonStart);
  const latest = season.at(-1);
  if (latest === undefined) return [];
  const days = new Set(season.map(({ day }) => day)).size;
  return [
    words.say("pain.notice", {
      day: sayDay(words, latest.day, "short"),
      place: sayPlace(words, latest.place),
      others: days - 1,
    }),
  ];
}
