import { askUnknownStudents, type NewStudent } from "./ask-students";
import { chooseTwin, studentOption, studentsByName } from "./choose-twin";
import type { KnownStudent } from "./import-preview";
import type { ReadColumn } from "./read-columns";
import { columnOf, groupBy, type ImportContext, isOpen, type RowDraft, setBack } from "./row-draft";
import { type FileConsent, settleConsent } from "./settle-consent";
import { nameKey } from "./text-key";

const CHOICE_LIMIT = 300;

export interface SettledStudents {
  readonly newStudents: readonly NewStudent[];
  readonly consents: readonly FileConsent[];
  /** Whom an alias means that several students bear. */
  readonly whose: readonly { readonly alias: string; readonly studentId: string }[];
}

/** Finds whose each row is. Names that nobody has, and students without consent, are one question each. */
export function settleStudents(rows: readonly RowDraft[], context: ImportContext): SettledStudents {
  const { log, input } = context;
  const column = columnOf(context, "alias");
  const known = studentsByName(input.students);
  const byStudent = new Map<string, { student: KnownStudent; rows: RowDraft[] }>();
  const newStudents: NewStudent[] = [];
  const join = (student: KnownStudent, joining: readonly RowDraft[]) => {
    const kept = byStudent.get(student.id);
    if (kept) for (const row of joining) kept.rows.push(row);
    else byStudent.set(student.id, { student, rows: [...joining] });
  };
  if (!column) {
    const student = askWhose(rows, context);
    if (student) join(student, rows);
  } else {
    const unknown: [string, readonly RowDraft[]][] = [];
    for (const [key, all] of groupBy(rows, (row) => nameKey(row.aliasText))) {
      const namesakes = known.get(key) ?? [];
      // Rows that are out already raise no question.
      const group = key === "" ? all : all.filter(isOpen);
      if (key === "") refuseNameless(group, column, context);
      else if (namesakes.length === 0) {
        if (group.length > 0) unknown.push([key, group]);
      } else if (group.length > 0) {
        const student = namesakes.length === 1 ? namesakes[0] : chooseTwin(namesakes, group, context);
        if (!student) continue;
        for (const row of group) {
          if (row.aliasText === student.alias) continue;
          const args = { value: row.aliasText, alias: student.alias };
          log.note("student-taken-for", row.row, column.header, args, row.aliasText);
        }
        join(student, group);
      }
    }
    for (const settled of askUnknownStudents(unknown, context)) {
      if (settled.kind === "known") join(settled.student, settled.rows);
      else newStudents.push(settled.student);
    }
  }
  refuseSecondTwins([...byStudent.values()], context);
  const consents = [...byStudent.values()].flatMap((entry) => settleKnown(entry.student, entry.rows, context));
  for (const fresh of newStudents)
    checkBirth(
      rows.filter((row) => row.alias === fresh.alias),
      fresh.birthYear,
      context,
    );
  return { newStudents, consents, whose: twinsAmong([...byStudent.values()], known) };
}

type Joined = { readonly student: KnownStudent; readonly rows: readonly RowDraft[] };

/** Whom each alias means that several students bear. */
function twinsAmong(joined: readonly Joined[], known: ReturnType<typeof studentsByName>): SettledStudents["whose"] {
  return joined.flatMap(({ student: { id, alias } }) =>
    (known.get(nameKey(alias)) ?? []).length > 1 ? [{ alias, studentId: id }] : [],
  );
}

/** One file can't be of two students of one alias: what it calls by another name would mix with what bears the name itself. */
function refuseSecondTwins(joined: readonly Joined[], context: ImportContext): void {
  const column = columnOf(context, "alias");
  joined.forEach(({ student, rows }, place) => {
    if (joined.findIndex((each) => each.student.alias === student.alias) === place) return;
    for (const row of rows.filter(isOpen)) {
      const told = { column: column?.header, value: row.aliasText, args: { alias: student.alias }, at: column?.at };
      context.log.issue({ code: "two-of-one-alias", row: row.row, ...told });
      row.state = "refused";
    }
  });
}

function refuseNameless(rows: readonly RowDraft[], column: ReadColumn, { log }: ImportContext): void {
  for (const row of rows) {
    // A refused name has been told already.
    if ((row.cells[column.at] ?? "").trim() === "") {
      log.issue({ code: "student-missing", row: row.row, column: column.header, at: column.at });
    }
    row.state = "refused";
  }
}

const numbers = (rows: readonly RowDraft[]): readonly number[] => rows.map((row) => row.row);

function askWhose(rows: readonly RowDraft[], { log, input }: ImportContext): KnownStudent | null {
  if (rows.length === 0) return null;
  if (input.students.length === 0) {
    log.issue({ code: "no-student-column", row: null });
    for (const row of rows) row.state = "refused";
    return null;
  }
  const answer = log.ask(
    {
      id: "whose-file",
      code: "whose-file",
      options: [
        ...input.students
          .slice(0, CHOICE_LIMIT)
          .map((student) => studentOption(student, { id: student.id, code: "student" }, input.students)),
      ],
    },
    numbers(rows),
  );
  const student = input.students.find(({ id }) => id === answer?.option) ?? null;
  if (!student) setBack(rows, "waiting");
  else for (const row of rows) log.note("all-taken-for", row.row, null, { alias: student.alias });
  return student;
}

function settleKnown(
  student: KnownStudent,
  rows: readonly RowDraft[],
  context: ImportContext,
): SettledStudents["consents"] {
  const { log } = context;
  for (const row of rows) {
    [row.alias, row.hand] = [student.alias, student.hand];
    if (row.handInFile && row.handInFile !== student.hand) {
      log.note("hand-on-file-kept", row.row, columnOf(context, "hand")?.header, { alias: student.alias }, student.id);
    }
  }
  checkBirth(rows, student.birthYear, context);
  return settleConsent(student, rows, context);
}

function checkBirth(rows: readonly RowDraft[], birthYear: number | null, context: ImportContext): void {
  if (birthYear === null) return;
  for (const row of rows) {
    if (row.day === "" || Number(row.day.slice(0, 4)) >= birthYear) continue;
    const column = columnOf(context, "day");
    context.log.issue({
      code: "before-birth",
      row: row.row,
      column: column?.header,
      value: row.day,
      args: { alias: row.alias, year: birthYear },
      at: column?.at,
    });
    row.state = "refused";
  }
}
