import type { Hand } from "@/lib/domain/handedness";
import { editDistance } from "./closest-word";
import { option } from "./import-log";
import type { KnownStudent } from "./import-preview";
import { columnOf, groupBy, type ImportContext, isOpen, type RowDraft, setBack } from "./row-draft";
import { nameKey, questionKey } from "./text-key";

const QUESTION_LIMIT = 50;
const CHOICE_LIMIT = 300;

const GIVEN_BY = { name: "givenBy", kind: "text", code: "consent-given-by", required: "required" } as const;

export interface NewStudent {
  readonly alias: string;
  readonly hand: Hand;
  readonly birthYear: number | null;
  readonly consentGivenBy: string;
}

export interface SettledStudents {
  readonly newStudents: readonly NewStudent[];
  readonly consents: readonly { readonly studentId: string; readonly alias: string; readonly givenBy: string }[];
}

/** Finds whose each row is. Names that nobody has, and students without consent, are one question each. */
export function settleStudents(rows: readonly RowDraft[], context: ImportContext): SettledStudents {
  const { log, input } = context;
  const column = columnOf(context, "alias");
  const known = new Map(input.students.map((student) => [nameKey(student.alias), student]));
  const byStudent = new Map<string, { student: KnownStudent; rows: RowDraft[] }>();
  const newStudents: NewStudent[] = [];
  const join = (student: KnownStudent, joining: readonly RowDraft[]) => {
    const kept = byStudent.get(student.id);
    if (kept) kept.rows.push(...joining);
    else byStudent.set(student.id, { student, rows: [...joining] });
  };
  if (!column) {
    const student = askWhose(rows, context);
    if (student) join(student, rows);
  } else {
    let asked = 0;
    for (const [key, all] of groupBy(rows, (row) => nameKey(row.aliasText))) {
      const student = known.get(key);
      // Rows that are out already raise no question.
      const group = key === "" ? all : all.filter(isOpen);
      if (group.length === 0) continue;
      if (key === "") {
        for (const row of group) {
          // A refused name has been told already.
          if ((row.cells[column.at] ?? "").trim() === "")
            log.issue({ code: "student-missing", row: row.row, column: column.header, at: column.at });
          row.state = "refused";
        }
      } else if (student) {
        for (const row of group) {
          if (row.aliasText !== student.alias)
            log.note(
              "student-taken-for",
              row.row,
              column.header,
              { value: row.aliasText, alias: student.alias },
              row.aliasText,
            );
        }
        join(student, group);
      } else if (++asked > QUESTION_LIMIT) {
        for (const row of group) {
          log.issue({
            code: "too-many-unknown-students",
            row: row.row,
            column: column.header,
            value: row.aliasText,
            args: { limit: QUESTION_LIMIT },
            at: column.at,
          });
          row.state = "refused";
        }
      } else {
        const settled = askUnknown(key, group, context);
        if (settled?.kind === "known") join(settled.student, group);
        else if (settled) newStudents.push(settled.student);
      }
    }
  }
  const consents = [...byStudent.values()].flatMap((entry) => settleKnown(entry.student, entry.rows, context));
  for (const fresh of newStudents)
    checkBirth(
      rows.filter((row) => row.alias === fresh.alias),
      fresh.birthYear,
      context,
    );
  return { newStudents, consents };
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
        ...input.students.slice(0, CHOICE_LIMIT).map(({ id, alias }) => option(id, { alias }, undefined, "student")),
      ],
    },
    numbers(rows),
  );
  const student = input.students.find(({ id }) => id === answer?.option) ?? null;
  if (!student) setBack(rows, "waiting");
  else for (const row of rows) log.note("all-taken-for", row.row, null, { alias: student.alias });
  return student;
}

function askUnknown(
  key: string,
  rows: readonly RowDraft[],
  context: ImportContext,
): { kind: "known"; student: KnownStudent } | { kind: "new"; student: NewStudent } | null {
  const { log, input } = context;
  const column = columnOf(context, "alias");
  const alias = rows[0]?.aliasText ?? "";
  const limit = key.length < 4 ? 1 : 2;
  const near = input.students
    .map((student) => ({ student, distance: editDistance(key, nameKey(student.alias), limit) }))
    .filter(({ distance }) => distance <= limit)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 3);
  const hands = new Set(rows.flatMap((row) => row.handInFile ?? []));
  const news = (["right", "left"] as const)
    .filter((hand) => hands.size !== 1 || hands.has(hand))
    .map((hand) => option(`new-${hand}`, { alias }, GIVEN_BY));
  const id = `student:${questionKey(key)}`;
  const answer = log.ask(
    {
      id,
      code: near[0] ? "student-close" : "student-unknown",
      args: { value: alias, alias: near[0]?.student.alias ?? "" },
      options: [
        ...near.map(({ student }) => option(`is-${student.id}`, { alias: student.alias }, undefined, "is-student")),
        ...news,
        option("leave-out"),
      ],
      at: column?.at,
    },
    numbers(rows),
  );
  if (!answer) {
    setBack(rows, "waiting");
    return null;
  }
  if (answer.option === "leave-out") {
    setBack(rows, "left-out");
    for (const row of rows) log.note("left-out", row.row, column?.header, { value: alias }, key);
    return null;
  }
  const mapped = near.find(({ student }) => answer.option === `is-${student.id}`)?.student;
  if (mapped) {
    for (const row of rows)
      log.note("student-taken-for", row.row, column?.header, { value: alias, alias: mapped.alias }, key);
    return { kind: "known", student: mapped };
  }
  const givenBy = (answer.fields.get("givenBy") ?? "").normalize("NFC").trim().slice(0, 120);
  const years = new Set(rows.flatMap((row) => row.birthYearInFile ?? []));
  const [year] = years;
  if (years.size > 1)
    log.issue({ code: "birth-years-differ", row: rows[0]?.row ?? null, value: [...years].join(", "), args: { alias } });
  const hand = answer.option === "new-left" ? "left" : "right";
  for (const row of rows) [row.alias, row.hand] = [alias, hand];
  return {
    kind: "new",
    student: { alias, hand, birthYear: years.size === 1 ? (year ?? null) : null, consentGivenBy: givenBy },
  };
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
  if (student.hasConsent) return [];
  const answer = log.ask(
    {
      id: `consent:${student.id}`,
      code: "consent-missing",
      args: { alias: student.alias },
      options: [option("on-paper", { alias: student.alias }, GIVEN_BY), option("leave-out")],
      at: columnOf(context, "alias")?.at,
    },
    numbers(rows),
  );
  if (answer?.option === "on-paper") {
    return [
      {
        studentId: student.id,
        alias: student.alias,
        givenBy: (answer.fields.get("givenBy") ?? "").normalize("NFC").trim().slice(0, 120),
      },
    ];
  }
  setBack(rows, answer ? "left-out" : "waiting");
  if (answer)
    for (const row of rows)
      log.note("left-out", row.row, columnOf(context, "alias")?.header, { value: student.alias }, student.id);
  return [];
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
