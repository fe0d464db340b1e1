import type { CalendarDay } from "@/lib/domain/calendar-day";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import type { DatedGoal, JudgedTrack } from "@/lib/domain/judged-track";

/** A track's goal in force on a day; before the first dated one that one, without dated ones the track's, from the start. */
export function datedGoalOn(track: JudgedTrack, day: CalendarDay): DatedGoal {
  const goals = track.goals ?? [];
  const inForce = goals.filter((goal) => goal.from <= day).at(-1) ?? goals[0];
  return inForce ?? { from: SINCE_EVER, low: track.goal?.low ?? null, high: track.goal?.high ?? null };
}

/**
 * The track as it was judged on a day: with the goal then in force and the least change worth having against it. What
 * was said of a look, and of a proved change, keeps the word that it earned under that goal; a new goal asks a new question
 * from its day on. Where no dated goal has a least change of its own, the track's holds at every look.
 *
 * @param day `YYYY-MM-DD`; before the first dated goal the first one holds
 */
export function trackOn(track: JudgedTrack, day: CalendarDay): JudgedTrack {
  if (track.goals === undefined || track.goals.length === 0) return track;
  const { low, high, worthwhileAtLeast } = datedGoalOn(track, day);
  const own = track.goals.some((goal) => goal.worthwhileAtLeast !== undefined);
  return { ...track, goal: { low, high }, worthwhileAtLeast: own ? worthwhileAtLeast : track.worthwhileAtLeast };
}
