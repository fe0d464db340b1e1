import { currentGroups } from "@/lib/domain/club-grouping";
import { type AcademyGroups, academyGroups } from "@/lib/report/academy-groups";
import { sayGroupOfClubs } from "@/lib/words/say-club";
import type { Viewer } from "../gate";
import type { WholeRoster } from "../roster/load-whole";

/**
 * The groups that may be counted of whoever is here.
 *
 * @param clubsOf the clubs with which a student is counted; undefined: the student is not counted at all
 */
export function groupsOf(
  { words, today }: Viewer,
  { everyone: { entries, grouping }, inCharge }: WholeRoster,
  clubsOf: (studentId: string) => ReadonlySet<string> | undefined,
): AcademyGroups | null {
  return academyGroups(words, {
    students: entries.flatMap(({ student }) => (clubsOf(student.id) === undefined ? [] : [student])),
    clubsOf: (studentId) => [...(clubsOf(studentId) ?? [])],
    clubs: currentGroups(grouping).map((group) => ({ value: group.id, label: sayGroupOfClubs(words, group) })),
    coaches: inCharge.coaches,
    coachesOf: (studentId) => inCharge.byStudent.get(studentId) ?? [],
    today,
  });
}

/** The first day that an academy's pages count from: of the season, or of the first film where that is later. */
export function countedFrom({ academy }: Viewer, { firstDay }: WholeRoster): string {
  return academy.seasonStart > firstDay ? academy.seasonStart : firstDay;
}
