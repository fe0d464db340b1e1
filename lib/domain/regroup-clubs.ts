import { CLUBS, type Club, kindOfClub } from "./club";
import { type ClubGroup, type ClubKind, clubKindOf } from "./club-group";
import { type ClubGrouping, currentGroups, type GroupOfClubs } from "./club-grouping";
import { clubKindOfWord } from "./club-word";

/** Why groups can't be changed as asked; `field` names what to mend. */
export interface RegroupIssue {
  readonly field: string;
  readonly code:
    | "name-missing"
    | "name-taken"
    | "not-a-group"
    | "same-group"
    | "no-club-moves"
    | "every-club-moves"
    | "not-its-club"
    | "club-twice"
    | "clubs-left-over"
    | "no-clubs";
  readonly clubs: readonly Club[];
}

/** A changed grouping with the groups that went and came, or why there is none. */
export type Regrouping =
  | {
      readonly kind: "ok";
      readonly grouping: ClubGrouping;
      readonly from: readonly ClubGroup[];
      readonly to: readonly ClubGroup[];
      /** For each group that came, the one whose goals of the academy's own it takes over. */
      readonly goalsFrom: readonly { readonly group: ClubGroup; readonly from: ClubGroup }[];
    }
  | { readonly kind: "issues"; readonly issues: readonly RegroupIssue[] };

/** Ways to change club groups. */
export const CLUB_CHANGES = ["arrange", "split", "merge", "rename"] as const;

/** A way to change club groups. */
export type ClubChange = (typeof CLUB_CHANGES)[number];

/** One change of an academy's club groups, as recorded. */
export interface RecordedRegrouping {
  readonly number: number;
  readonly kind: ClubChange;
  readonly from: readonly ClubGroup[];
  readonly to: readonly ClubGroup[];
  /** Sessions that changed their group with it. */
  readonly sessions: number;
  readonly day: string;
  readonly who: string;
  readonly why: string;
  /** Every group as it was from then on. */
  readonly grouping: ClubGrouping;
  readonly recordedAt: string;
}

/** A group to bring into use. */
export interface Wanted {
  readonly name: string;
  readonly clubs: readonly Club[];
  readonly kind: ClubKind;
}

const inOrder = (clubs: readonly Club[]): readonly Club[] => CLUBS.filter((club) => clubs.includes(club));
/** Whether two lists hold the same clubs. */
export const sameClubs = (a: readonly Club[], b: readonly Club[]): boolean =>
  a.length === b.length && a.every((club) => b.includes(club));
const key = (name: string): string => name.normalize("NFKC").trim().toLowerCase();

/** One thing to mend. */
export function issue(field: string, code: RegroupIssue["code"], clubs: readonly Club[] = []): RegroupIssue {
  return { field, code, clubs };
}

/** Names that are missing, or that another group in use bears: its own, or any word for its kind. */
export function nameIssues(
  others: readonly GroupOfClubs[],
  names: readonly (readonly [field: string, name: string])[],
): RegroupIssue[] {
  const taken = new Set(others.flatMap((group) => (group.name === null ? [] : [key(group.name)])));
  const kinds = new Set(others.flatMap((group) => (group.name === null ? [clubKindOf(group.id)] : [])));
  return names.flatMap(([field, name]) => {
    if (key(name) === "") return [issue(field, "name-missing")];
    const kind = clubKindOfWord(name);
    if (taken.has(key(name)) || (kind !== null && kinds.has(kind))) return [issue(field, "name-taken")];
    taken.add(key(name));
    return [];
  });
}

/** An id that no group ever had, from the kind and the name's letters. */
function freshId(grouping: ClubGrouping, { kind, name }: Wanted): ClubGroup {
  const letters = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
  const slug = `${kind}-${letters || "group"}` as ClubGroup;
  let id = slug;
  for (let nth = 2; grouping.some((group) => group.id === id); nth++) id = `${slug}-${nth}` as ClubGroup;
  return id;
}

/** Brings a group into use: a retired one of the very same clubs and kind comes back, so that a split mends a merge. */
export function bringIn(grouping: ClubGrouping, wanted: Wanted): { grouping: ClubGrouping; id: ClubGroup } {
  const clubs = inOrder(wanted.clubs);
  const before = grouping.find(
    (group) => group.state === "retired" && clubKindOf(group.id) === wanted.kind && sameClubs(group.clubs, clubs),
  );
  const id = before?.id ?? freshId(grouping, wanted);
  const group: GroupOfClubs = { id, name: wanted.name.trim(), clubs, state: "current", rest: null };
  return { grouping: [...grouping.filter((each) => each.id !== id), group], id };
}

function retire(grouping: ClubGrouping, ids: readonly ClubGroup[], rest: ClubGroup): ClubGrouping {
  return grouping.map((group) => (ids.includes(group.id) ? { ...group, state: "retired", rest } : group));
}

/** The kind whose goals a part of a group takes: that of its clubs where they are of one kind, else the whole group's. */
function kindOfPart(group: GroupOfClubs, clubs: readonly Club[]): ClubKind {
  const [only, ...more] = new Set(clubs.map(kindOfClub));
  return only !== undefined && more.length === 0 ? only : clubKindOf(group.id);
}

/**
 * Splits a group in two: some of its clubs go to a second group, the others to a first one.
 *
 * @param asked.rest which part takes the sessions that name no club of the group
 */
export function splitGroup(
  grouping: ClubGrouping,
  asked: {
    readonly group: string;
    readonly firstName: string;
    readonly secondName: string;
    readonly secondClubs: readonly Club[];
    readonly rest: "first" | "second";
  },
): Regrouping {
  const current = currentGroups(grouping);
  const group = current.find((each) => each.id === asked.group);
  if (!group) return { kind: "issues", issues: [issue("group", "not-a-group")] };
  const foreign = asked.secondClubs.filter((club) => !group.clubs.includes(club));
  const staying = group.clubs.filter((club) => !asked.secondClubs.includes(club));
  const others = current.filter((each) => each.id !== group.id);
  const issues = nameIssues(others, [
    ["firstName", asked.firstName],
    ["secondName", asked.secondName],
  ]);
  if (foreign.length > 0) issues.push(issue("secondClubs", "not-its-club", foreign));
  else if (asked.secondClubs.length === 0) issues.push(issue("secondClubs", "no-club-moves"));
  else if (staying.length === 0) issues.push(issue("secondClubs", "every-club-moves"));
  if (issues.length > 0) return { kind: "issues", issues };
  const part = (name: string, clubs: readonly Club[]): Wanted => ({ name, clubs, kind: kindOfPart(group, clubs) });
  const first = bringIn(grouping, part(asked.firstName, staying));
  const second = bringIn(first.grouping, part(asked.secondName, asked.secondClubs));
  const rest = asked.rest === "first" ? first.id : second.id;
  return {
    kind: "ok",
    grouping: retire(second.grouping, [group.id], rest),
    from: [group.id],
    to: [first.id, second.id],
    goalsFrom: [first.id, second.id].map((part) => ({ group: part, from: group.id })),
  };
}

/**
 * Merges two groups into one.
 *
 * @param asked.goalsOf the one of the two whose goals the merged group takes
 */
export function mergeGroups(
  grouping: ClubGrouping,
  asked: {
    readonly first: string;
    readonly second: string;
    readonly name: string;
    readonly goalsOf: "first" | "second";
  },
): Regrouping {
  const current = currentGroups(grouping);
  const first = current.find((each) => each.id === asked.first);
  const second = current.find((each) => each.id === asked.second);
  const issues: RegroupIssue[] = [];
  if (!first) issues.push(issue("first", "not-a-group"));
  if (!second) issues.push(issue("second", "not-a-group"));
  else if (first?.id === second.id) issues.push(issue("second", "same-group"));
  const others = current.filter((each) => each.id !== first?.id && each.id !== second?.id);
  issues.push(...nameIssues(others, [["name", asked.name]]));
  if (issues.length > 0 || !first || !second) return { kind: "issues", issues };
  const giving = asked.goalsOf === "first" ? first : second;
  const clubs = [...first.clubs, ...second.clubs];
  const merged = bringIn(grouping, { name: asked.name, clubs, kind: clubKindOf(giving.id) });
  const from = [first.id, second.id];
  return {
    kind: "ok",
    grouping: retire(merged.grouping, from, merged.id),
    from,
    to: [merged.id],
    goalsFrom: [{ group: merged.id, from: giving.id }],
  };
}

/** Gives a group another name; its id, tracks and goals stay. */
export function renameGroup(
  grouping: ClubGrouping,
  asked: { readonly group: string; readonly name: string },
): Regrouping {
  const current = currentGroups(grouping);
  const group = current.find((each) => each.id === asked.group);
  if (!group) return { kind: "issues", issues: [issue("group", "not-a-group")] };
  const others = current.filter((each) => each.id !== group.id);
  const issues = nameIssues(others, [["name", asked.name]]);
  if (issues.length > 0) return { kind: "issues", issues };
  const renamed = grouping.map((each) => (each.id === group.id ? { ...each, name: asked.name.trim() } : each));
  return { kind: "ok", grouping: renamed, from: [group.id], to: [group.id], goalsFrom: [] };
}
