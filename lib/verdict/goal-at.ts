import type { JudgedTrack } from "@/lib/domain/judged-track";

/**
 * The track as it was judged on a day: with the goal then in force. A proved change keeps the word that it earned under
 * that goal; a new goal asks a new question from its day on.
 *
 * @param day `YYYY-MM-DD`; before the first dated goal the first one holds
 */
export function trackOn(track: JudgedTrack, day: string): JudgedTrack {
  const goals = track.goals;
  if (goals === undefined || goals.length === 0) return track;
  const inForce = goals.filter((goal) => goal.from <= day).at(-1) ?? goals[0];
  return inForce === undefined ? track : { ...track, goal: { low: inForce.low, high: inForce.high } };
}
