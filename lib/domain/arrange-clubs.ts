import { CLUBS, type Club } from "./club";
import { type ClubGroup, type ClubKind, clubKindOf } from "./club-group";
import { type ClubGrouping, currentGroups, groupOfClub } from "./club-grouping";
import { bringIn, issue, nameIssues, type RegroupIssue, type Regrouping, sameClubs } from "./regroup-clubs";

/** One group of a list that is laid out anew. */
export interface ArrangedGroup {
  /** What names its fields. */
  readonly field: string;
  /** Empty: the kind's own name, allowed where the group holds just the clubs of its kind. */
  readonly name: string;
  readonly clubs: readonly Club[];
  readonly kind: ClubKind;
}

/** Clubs that stand twice or nowhere. */
function sharingIssues(groups: readonly ArrangedGroup[]): RegroupIssue[] {
  const seen = new Set<Club>();
  const issues: RegroupIssue[] = [];
  for (const group of groups) {
    const twice = group.clubs.filter((club, at) => seen.has(club) || group.clubs.indexOf(club) !== at);
    if (group.clubs.length === 0) issues.push(issue(`clubs.${group.field}`, "no-clubs"));
    if (twice.length > 0) issues.push(issue(`clubs.${group.field}`, "club-twice", [...new Set(twice)]));
    for (const club of group.clubs) seen.add(club);
  }
  const left = CLUBS.filter((club) => !seen.has(club));
  const last = groups.at(-1);
  if (left.length > 0) issues.push(issue(`clubs.${last?.field ?? "0"}`, "clubs-left-over", left));
  return issues;
}

/** Lays all groups out anew: for an academy that has no session yet. */
export function arrangeGroups(grouping: ClubGrouping, groups: readonly ArrangedGroup[]): Regrouping {
  const builtIn = (group: ArrangedGroup): boolean =>
    grouping.some((each) => each.id === group.kind && sameClubs(each.clubs, group.clubs));
  const issues = [
    ...nameIssues(
      [],
      groups
        .filter((group) => group.name.trim() !== "" || !builtIn(group))
        .map((group) => [`name.${group.field}`, group.name]),
    ),
    ...sharingIssues(groups),
  ];
  if (issues.length > 0) return { kind: "issues", issues };
  const before = currentGroups(grouping);
  // Everything retires first, so that a group of the same clubs and kind comes back under its old id.
  let arranged: ClubGrouping = grouping.map((group) => ({ ...group, state: "retired" }));
  const to: ClubGroup[] = [];
  for (const group of groups) {
    const made = bringIn(arranged, group);
    const name = group.name.trim() === "" ? null : group.name.trim();
    arranged = made.grouping.map((each) => (each.id === made.id ? { ...each, name } : each));
    to.push(made.id);
  }
  const settled = arranged.map((group) =>
    group.state === "current" ? group : { ...group, rest: mostOf(arranged, group.clubs) },
  );
  const goalsFrom = to.map((group) => ({ group, from: clubKindOf(group) }));
  return { kind: "ok", grouping: settled, from: before.map((group) => group.id), to, goalsFrom };
}

/** The current group that holds most of some clubs; the first of equals. */
function mostOf(grouping: ClubGrouping, clubs: readonly Club[]): ClubGroup {
  const holders = clubs.map((club) => groupOfClub(grouping, club));
  const count = (id: ClubGroup): number => holders.filter((each) => each === id).length;
  return holders.reduce((best, id) => (count(id) > count(best) ? id : best));
}
