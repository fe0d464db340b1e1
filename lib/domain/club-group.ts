/** The kinds of clubs, shortest first. The short list of club groups starts with one group of each kind. */
export const CLUB_KINDS = ["short-iron", "iron", "hybrid", "wood", "driver"] as const;

/** A kind of club; built-in goals are given by kind. */
export type ClubKind = (typeof CLUB_KINDS)[number];

/**
 * A club group: one of the short list, or one of the academy's own, whose id begins with the kind whose built-in goals
 * it takes. Tracks and pools never cross groups: iron tilt is not driver tilt. The club itself stays on the session.
 */
export type ClubGroup = ClubKind | `${ClubKind}-${string}`;

/** Whether a text names a kind of club. */
export function isClubKind(text: string): text is ClubKind {
  return (CLUB_KINDS as readonly string[]).includes(text);
}

/** Whether a text has the form of a club group's id; whether an academy has that group is another question. */
export function isClubGroup(text: string): text is ClubGroup {
  return isClubKind(text) || CLUB_KINDS.some((kind) => text.startsWith(`${kind}-`) && text.length > kind.length + 1);
}

/**
 * The kind whose built-in goals a club group takes.
 *
 * @throws RangeError for a text that isn't a club group's id
 */
export function clubKindOf(group: ClubGroup): ClubKind {
  const kind = CLUB_KINDS.find((each) => group === each || group.startsWith(`${each}-`));
  if (kind === undefined) throw new RangeError(`not a club group: ${group}`);
  return kind;
}
