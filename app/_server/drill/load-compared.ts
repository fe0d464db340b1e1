import { notFound } from "next/navigation";
import { readComparedAnalyses, readComparedAssignments, readDrilledFundamentals } from "@/db/read/compared";
import { readDrills } from "@/db/read/drills";
import { readCharges } from "@/db/read/people";
import { readStudents } from "@/db/read/students";
import { readAcademyWaiting } from "@/db/read/waiting";
import { currentGroups } from "@/lib/domain/club-grouping";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { compareDrills } from "@/lib/drills/compare-drills";
import { buildComparedDrills } from "@/lib/report/build-compared-drills";
import { byStudent } from "@/lib/report/by-student";
import type { ComparedDrillsPage } from "@/lib/report/compared-drills-model";
import { POLICY } from "@/lib/verdict/policy";
import { linkTables } from "../archive/table-links";
import type { Viewer } from "../gate";
import { loadRules } from "../roster/load-verdicts";
import type { Judged } from "../worker/tasks";
import { chooseGroup } from "./choose-group";

export { comparedDrillsTitle } from "@/lib/report/build-compared-drills";

/** What the comparison is asked for. */
export interface AskedComparison {
  readonly for?: string | undefined;
  readonly club?: string | undefined;
}

type Given = ReturnType<typeof readComparedAssignments>[number];

function drillsOf(given: readonly Given[]): ComparedTrack["drills"] {
  return given.map(({ drill, start, end, minutes, days }) => ({
    drill,
    start,
    ...(end === null ? {} : { end }),
    ...(minutes === null ? {} : { dose: { minutes, days } }),
  }));
}

/** Who had each student in charge first: whose way of teaching it began with. */
function coachOf(viewer: Viewer): (studentId: string) => string {
  const first = new Map<string, string>();
  for (const { studentId, coachId } of readCharges(viewer.db, viewer.academy.id))
    if (!first.has(studentId)) first.set(studentId, coachId);
  return (studentId) => first.get(studentId) ?? "";
}

/** How the drills that were given for a fundamental compare, over everybody whom the viewer may see. */
export async function loadComparedDrills(viewer: Viewer, asked: AskedComparison): Promise<ComparedDrillsPage> {
  const { db, scope, words, today } = viewer;
  const { fundamentals, grouping } = await loadRules(viewer);
  const drilled = new Map(readDrilledFundamentals(db, scope).map((each) => [each.fundamentalId, each.students]));
  const offered = fundamentals.filter(({ id }) => drilled.has(id));
  const most = offered.toSorted((a, b) => (drilled.get(b.id) ?? 0) - (drilled.get(a.id) ?? 0))[0] ?? null;
  const wished = asked.for === undefined ? most : fundamentals.find(({ id }) => id === asked.for);
  if (wished === undefined) notFound();
  if (wished === null) return buildComparedDrills(words, { fundamental: null });
  const analyses = readComparedAnalyses(db, scope, { fundamentalId: wished.id, policyVersion: POLICY.version });
  const groups = currentGroups(grouping).map(({ id }) => id);
  const clubGroup = chooseGroup(groups, analyses, asked.club);
  const given = byStudent(readComparedAssignments(db, scope, wished.id));
  const waits = byStudent(readAcademyWaiting(db, scope, wished.id));
  const students = new Map(readStudents(db, scope).map((student) => [student.id, student]));
  const coach = coachOf(viewer);
  const tracks = analyses
    .filter((each) => each.clubGroup === clubGroup)
    .flatMap(({ studentId, body }): ComparedTrack[] => {
      const student = students.get(studentId);
      if (student === undefined) return [];
      const { track } = JSON.parse(body) as Judged;
      const ageYears = student.birthYear === null ? {} : { ageYears: Number(today.slice(0, 4)) - student.birthYear };
      const drills = drillsOf(given.get(studentId) ?? []);
      const waiting = (waits.get(studentId) ?? []).map(({ fromDay, untilDay }) => ({
        from: fromDay,
        to: untilDay ?? today,
      }));
      return [
        {
          ...track,
          waiting,
          student: studentId,
          coach: coach(studentId),
          handedness: student.hand,
          drills,
          ...ageYears,
        },
      ];
    });
  const page = buildComparedDrills(words, {
    fundamental: wished,
    clubGroup,
    offered: offered.some(({ id }) => id === wished.id) ? offered : [...offered, wished],
    grouping,
    groups: groups.filter((group) => analyses.some((each) => each.clubGroup === group)),
    comparison: compareDrills(tracks, POLICY),
    measured: tracks.length,
    idOf: new Map(readDrills(db, scope).map(({ id, name }) => [name, id])),
    today,
  });
  return linkTables(words, "compared-drills", { for: wished.id, club: clubGroup ?? undefined }, page);
}
