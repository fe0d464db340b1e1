import { daysBetween } from "@/lib/domain/calendar-day";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { TrackVerdict } from "@/lib/domain/track-verdict";

/** Days away after which an old level is doubted by one more sd of a session mean. Own choice: six weeks, as "to be checked". */
export const AWAY_DOUBT_DAYS = 42;

/**
 * The old level as a starting belief for a new season, widened with the days away.
 *
 * The variance is that of the old level (from its 80 of 100 interval) plus one squared sd of a session mean for every
 * six weeks between the last old session and the first new one, as of a level that wanders.
 *
 * @param earlier verdict on the sessions before the border
 * @returns undefined when nothing is known of the old level
 */
export function startLevel(
  earlier: TrackVerdict,
  lastEarlierDay: string,
  firstDay: string,
): JudgedTrack["startLevel"] | undefined {
  if (earlier.levelNow === null || earlier.unitSd === null) return undefined;
  const { estimate, low80, high80 } = earlier.levelNow;
  const levelSd = (high80 - low80) / (2 * 1.2815515655446004);
  const days = Math.max(0, daysBetween(lastEarlierDay, firstDay));
  return { mean: estimate, sd: Math.hypot(levelSd, earlier.unitSd * Math.sqrt(days / AWAY_DOUBT_DAYS)) };
}
