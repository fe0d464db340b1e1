/** The short list of club groups, shortest clubs first. Tracks and pools never cross them: iron tilt is not driver tilt. */
export const CLUB_GROUPS = ["short-iron", "iron", "hybrid", "wood", "driver"] as const;

/** One of the short list of club groups; the club itself stays on the session. */
export type ClubGroup = (typeof CLUB_GROUPS)[number];

/** Whether a text names a club group. */
export function isClubGroup(text: string): text is ClubGroup {
  return (CLUB_GROUPS as readonly string[]).includes(text);
}
