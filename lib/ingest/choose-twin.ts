import { option } from "./import-log";
import type { ImportOption, KnownStudent } from "./import-preview";
import { columnOf, type ImportContext, type RowDraft, setBack } from "./row-draft";
import { nameKey, questionKey } from "./text-key";

/** Students by the key of their alias; whoever bears it, one student once. */
export function studentsByName(students: readonly KnownStudent[]): ReadonlyMap<string, readonly KnownStudent[]> {
  const byName = new Map<string, KnownStudent[]>();
  for (const student of students) {
    const key = nameKey(student.alias);
    const same = byName.get(key) ?? [];
    if (same.every(({ id }) => id !== student.id)) byName.set(key, [...same, student]);
  }
  return byName;
}

/** A student as an option; of two who bear one alias each is told by the coach and the birth year. */
export function studentOption(
  student: KnownStudent,
  { id, code }: { readonly id: string; readonly code: string },
  students: readonly KnownStudent[],
): ImportOption {
  const { alias, coach = "", birthYear } = student;
  const key = nameKey(alias);
  if (students.every((each) => each.id === student.id || nameKey(each.alias) !== key))
    return option(id, { alias }, undefined, code);
  const told = { hasCoach: coach === "" ? "no" : "yes", coach, hasYear: birthYear === null ? "no" : "yes" };
  return option(id, { alias, ...told, year: String(birthYear ?? "") }, undefined, "twin");
}

/**
 * Asks which of several students of one alias is meant, as where two coaches each have one and a director sends the file.
 *
 * @returns null: nobody said, or neither; the rows wait or are left out
 */
export function chooseTwin(
  twins: readonly KnownStudent[],
  rows: readonly RowDraft[],
  context: ImportContext,
): KnownStudent | null {
  const { log, input } = context;
  const alias = twins[0]?.alias ?? "";
  const column = columnOf(context, "alias");
  const answer = log.ask(
    {
      id: `which:${questionKey(nameKey(alias))}`,
      code: "student-twice",
      args: { alias },
      options: [
        ...twins.map((student) => studentOption(student, { id: `is-${student.id}`, code: "student" }, input.students)),
        option("leave-out"),
      ],
      at: column?.at,
    },
    rows.map((row) => row.row),
  );
  const chosen = twins.find(({ id }) => answer?.option === `is-${id}`);
  if (chosen) return chosen;
  setBack(rows, answer ? "left-out" : "waiting");
  if (answer) for (const row of rows) log.note("left-out", row.row, column?.header, { value: alias }, alias);
  return null;
}
