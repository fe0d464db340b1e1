import type { BriefSource, RunningPause } from "./brief-source";

/** Breaks and pauses that are on, by student. One without an end is over once the student was filmed after it began. */
export function pausing({
  pauses,
  students,
}: Pick<BriefSource, "pauses" | "students">): ReadonlyMap<string, RunningPause> {
  const last = new Map(students.map(({ student, lastDay }) => [student.id, lastDay ?? ""]));
  const on = pauses.filter(({ studentId, day, endDay }) => endDay !== null || (last.get(studentId) ?? "") <= day);
  return new Map(on.map((pause) => [pause.studentId, pause]));
}
