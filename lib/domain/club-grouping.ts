import { z } from "zod";
import { CLUBS, type Club, clubsOfKind, isClub, kindOfClub } from "./club";
import { CLUB_KINDS, type ClubGroup, clubKindOf, isClubGroup, isClubKind } from "./club-group";
import { readClubWord } from "./club-word";

/** One club group of an academy, in use or retired by a split or merge. */
export interface GroupOfClubs {
  readonly id: ClubGroup;
  /** As the academy calls it; null: by the kind's own name. */
  readonly name: string | null;
  /** The clubs that it holds, or held when it was retired; shortest first. */
  readonly clubs: readonly Club[];
  readonly state: "current" | "retired";
  /** Where sessions go that named the group and no club of it, should its clubs lie in several groups now; null while current. */
  readonly rest: ClubGroup | null;
}

/** Every club group that an academy has or had. The current ones share all clubs among them, each club once. */
export type ClubGrouping = readonly GroupOfClubs[];

/** The short list that every academy begins with: one group a kind. */
export const SHORT_LIST: ClubGrouping = CLUB_KINDS.map((kind) => ({
  id: kind,
  name: null,
  clubs: clubsOfKind(kind),
  state: "current",
  rest: null,
}));

const filed = z.array(
  z.object({
    id: z.string().refine(isClubGroup),
    name: z.string().nullable(),
    clubs: z.array(z.string().refine(isClub)),
    state: z.enum(["current", "retired"]),
    rest: z.string().refine(isClubGroup).nullable(),
  }),
);

/**
 * A grouping as it was kept.
 *
 * @throws Error where the text isn't a whole grouping
 */
export function parseClubGrouping(text: string): ClubGrouping {
  return filed.parse(JSON.parse(text)) as ClubGrouping;
}

/** The groups in use, by their shortest club. */
export function currentGroups(grouping: ClubGrouping): readonly GroupOfClubs[] {
  const place = (group: GroupOfClubs): number => CLUBS.indexOf(group.clubs[0] as Club);
  return grouping.filter((group) => group.state === "current").sort((a, b) => place(a) - place(b));
}

/**
 * A group that the academy has or had.
 *
 * @throws RangeError for one that it never had
 */
export function requireGroup(grouping: ClubGrouping, id: string): GroupOfClubs {
  const found = grouping.find((group) => group.id === id);
  if (!found) throw new RangeError(`the academy has no club group ${id}`);
  return found;
}

/** The current group that holds a club. */
export function groupOfClub(grouping: ClubGrouping, club: Club): ClubGroup {
  const holder = grouping.find((group) => group.state === "current" && group.clubs.includes(club));
  if (!holder) throw new RangeError(`no club group holds ${club}`);
  return holder.id;
}

/**
 * The group that a session belongs to now.
 *
 * What was said of a session stays: its group, and the club in its own words. A club of the group that was said goes
 * wherever that club is now. A session of another or of no known club stays with its group; was the group retired, it
 * goes where all of its clubs went, or else where the split sent sessions without a club.
 *
 * @param said the group that was said when the session was entered
 * @param club the club as somebody wrote it; null: not said
 * @throws RangeError for a group that the academy never had
 */
export function groupNow(grouping: ClubGrouping, said: ClubGroup, club: string | null): ClubGroup {
  const group = requireGroup(grouping, said);
  const named = club === null ? null : (readClubWord(club)?.club ?? null);
  if (named !== null && (group.clubs.includes(named) || (isClubKind(said) && kindOfClub(named) === said)))
    return groupOfClub(grouping, named);
  if (group.state === "current") return group.id;
  const [only, ...more] = new Set(group.clubs.map((each) => groupOfClub(grouping, each)));
  if (only !== undefined && more.length === 0) return only;
  if (group.rest === null) throw new RangeError(`nothing says where sessions of ${said} went`);
  return groupNow(grouping, group.rest, null);
}

/**
 * The group to keep as what was said of a session: the club's kind where the club tells as much as the group, so that
 * a later file that names only the club means the same session.
 */
export function saidGroup(grouping: ClubGrouping, chosen: ClubGroup, club: string | null): ClubGroup {
  if (isClubKind(chosen) || club === null) return chosen;
  const word = readClubWord(club);
  if (word === null || word.club === null) return chosen;
  return groupOfClub(grouping, word.club) === groupNow(grouping, chosen, club) ? word.kind : chosen;
}

/** Whether the groups are those of the short list, none renamed. */
export function isShortList(grouping: ClubGrouping): boolean {
  return currentGroups(grouping).every(
    (group) =>
      isClubKind(group.id) &&
      group.name === null &&
      group.clubs.length === clubsOfKind(clubKindOf(group.id)).length &&
      group.clubs.every((club) => kindOfClub(club) === group.id),
  );
}
