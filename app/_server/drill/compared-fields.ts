import { readComparedAssignments } from "@/db/read/compared";
import { readFairAllocations, readFairTests } from "@/db/read/fair-tests";
import { readCharges } from "@/db/read/people";
import { readStudents } from "@/db/read/students";
import { readAcademyWaiting } from "@/db/read/waiting";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { byStudent } from "@/lib/report/by-student";
import { drillsOfTests } from "../fair/fair-source";
import type { Viewer } from "../gate";

/** What the comparison of drills needs of a student beside a judged track. */
export type ComparedFields = Omit<ComparedTrack, keyof JudgedTrack>;

type Given = ReturnType<typeof readComparedAssignments>[number];

/** In place of a coach where nobody had a student in charge. */
const NOBODY = "nobody";

/** Who had each student in charge first: whose way of teaching it began with. */
function coachOf({ db, academy }: Viewer): (studentId: string) => string {
  const first = new Map<string, string>();
  for (const { studentId, coachId } of readCharges(db, academy.id))
    if (!first.has(studentId)) first.set(studentId, coachId);
  return (studentId) => first.get(studentId) ?? NOBODY;
}

/** Whether the lot said a drill to a student on a day or before. */
function lotOf(viewer: Viewer, fundamentalId: string): (given: Given) => boolean {
  const drillsOf = drillsOfTests(viewer);
  const drawn = readFairTests(viewer.db, viewer.scope)
    .filter((test) => test.fundamentalId === fundamentalId)
    .flatMap((test) => {
      const drills = drillsOf(test);
      return readFairAllocations(viewer.db, test).map(({ studentId, day, arm }) => ({
        studentId,
        day,
        drill: drills[arm],
      }));
    });
  return ({ studentId, drill, start }) =>
    drawn.some((draw) => draw.studentId === studentId && draw.drill === drill && draw.day <= start);
}

/** Of every student whom the viewer may see, what the comparison for a fundamental rests on beside the track; null: no such student. */
export function comparedFields(viewer: Viewer, fundamentalId: string): (studentId: string) => ComparedFields | null {
  const { db, scope, today } = viewer;
  const given = byStudent(readComparedAssignments(db, scope, fundamentalId));
  const waits = byStudent(readAcademyWaiting(db, scope, fundamentalId));
  const students = new Map(readStudents(db, scope).map((student) => [student.id, student]));
  const coach = coachOf(viewer);
  const isDrawn = lotOf(viewer, fundamentalId);
  return (studentId) => {
    const student = students.get(studentId);
    if (student === undefined) return null;
    return {
      waiting: (waits.get(studentId) ?? []).map(({ fromDay, untilDay }) => ({ from: fromDay, to: untilDay ?? today })),
      ...{ student: studentId, coach: coach(studentId), handedness: student.hand },
      drills: (given.get(studentId) ?? []).map((each) => ({
        ...{ drill: each.drill, start: each.start },
        ...(each.end === null ? {} : { end: each.end }),
        ...(each.minutes === null ? {} : { dose: { minutes: each.minutes, days: each.days } }),
        ...(isDrawn(each) ? { assigned: "chance" as const } : {}),
      })),
      ...(student.birthYear === null ? {} : { ageYears: Number(today.slice(0, 4)) - student.birthYear }),
    };
  };
}
