import type { Hand } from "@/lib/domain/handedness";
import { studentOption } from "./choose-twin";
import { editDistance } from "./closest-word";
import { option } from "./import-log";
import type { ImportAnswer, KnownStudent } from "./import-preview";
import { columnOf, type ImportContext, type RowDraft, setBack } from "./row-draft";
import { nameKey, questionKey } from "./text-key";

const QUESTION_LIMIT = 50;

export const GIVEN_BY = { name: "givenBy", kind: "text", code: "consent-given-by", required: "required" } as const;

/** Who gave consent, as typed beside an answer. */
export function givenBy(answer: ImportAnswer): string {
  return (answer.fields.get("givenBy") ?? "").normalize("NFC").trim().slice(0, 120);
}

export interface NewStudent {
  readonly alias: string;
  readonly hand: Hand;
  readonly birthYear: number | null;
  readonly consentGivenBy: string;
}

export type SettledName =
  | { readonly kind: "known"; readonly student: KnownStudent; readonly rows: readonly RowDraft[] }
  | { readonly kind: "new"; readonly student: NewStudent };

/** What became of a name: a student, or a wait or refusal that another name may share. */
type Outcome = SettledName | { readonly kind: "waiting" } | { readonly kind: "left-out" };

/**
 * Asks about each name that nobody has, those with most rows first: a known student or another new name that is near
 * in spelling, a new student, or nobody.
 */
export function askUnknownStudents(
  groups: readonly (readonly [string, readonly RowDraft[]])[],
  context: ImportContext,
): readonly SettledName[] {
  const column = columnOf(context, "alias");
  const settled = new Map<string, { readonly alias: string; readonly outcome: Outcome }>();
  const ordered = groups.toSorted(([, a], [, b]) => b.length - a.length);
  for (const [key, rows] of ordered.slice(0, QUESTION_LIMIT)) {
    settled.set(key, { alias: rows[0]?.aliasText ?? "", outcome: askOne(key, rows, settled, context) });
  }
  for (const [, rows] of ordered.slice(QUESTION_LIMIT)) {
    for (const row of rows) {
      const args = { limit: QUESTION_LIMIT };
      context.log.issue({
        code: "too-many-unknown-students",
        row: row.row,
        column: column?.header,
        value: row.aliasText,
        args,
        at: column?.at,
      });
      row.state = "refused";
    }
  }
  const named = [...settled.values()].flatMap(({ outcome }) =>
    outcome.kind === "known" || outcome.kind === "new" ? [outcome] : [],
  );
  return [...new Set(named)];
}

function askOne(
  key: string,
  rows: readonly RowDraft[],
  settled: ReadonlyMap<string, { readonly alias: string; readonly outcome: Outcome }>,
  context: ImportContext,
): Outcome {
  const { log, input } = context;
  const column = columnOf(context, "alias");
  const alias = rows[0]?.aliasText ?? "";
  const limit = key.length < 4 ? 1 : 2;
  const near = <T>(candidates: readonly T[], keyOf: (candidate: T) => string): readonly T[] =>
    candidates
      .map((candidate) => ({ candidate, distance: editDistance(key, keyOf(candidate), limit) }))
      .filter(({ distance }) => distance <= limit)
      .sort((a, b) => a.distance - b.distance)
      .slice(0, 3)
      .map(({ candidate }) => candidate);
  const known = near(input.students, (student) => nameKey(student.alias));
  const others = near([...settled], ([other]) => other);
  const hands = new Set(rows.flatMap((row) => row.handInFile ?? []));
  const nearest = known[0]?.alias ?? others[0]?.[1].alias;
  const answer = log.ask(
    {
      id: `student:${questionKey(key)}`,
      code: nearest === undefined ? "student-unknown" : "student-close",
      args: { value: alias, alias: nearest ?? "" },
      options: [
        ...known.map((student) =>
          studentOption(student, { id: `is-${student.id}`, code: "is-student" }, input.students),
        ),
        ...others.map(([other, { alias: name }]) =>
          option(`as-${questionKey(other)}`, { alias: name }, undefined, "is-student"),
        ),
        ...(["right", "left"] as const)
          .filter((hand) => hands.size !== 1 || hands.has(hand))
          .map((hand) => option(`new-${hand}`, { alias }, GIVEN_BY)),
        option("leave-out"),
      ],
      at: column?.at,
    },
    rows.map((row) => row.row),
  );
  const takenFor = (name: string) => {
    for (const row of rows) log.note("student-taken-for", row.row, column?.header, { value: alias, alias: name }, key);
  };
  const leave = (state: "waiting" | "left-out"): Outcome => {
    setBack(rows, state);
    if (state === "left-out")
      for (const row of rows) log.note("left-out", row.row, column?.header, { value: alias }, key);
    return { kind: state };
  };
  if (!answer) return leave("waiting");
  if (answer.option === "leave-out") return leave("left-out");
  const student = known.find(({ id }) => answer.option === `is-${id}`);
  if (student) {
    takenFor(student.alias);
    return { kind: "known", student, rows };
  }
  const other = others.find(([name]) => answer.option === `as-${questionKey(name)}`)?.[1];
  if (!other) return { kind: "new", student: newStudent(alias, rows, answer, context) };
  if (other.outcome.kind === "waiting" || other.outcome.kind === "left-out") return leave(other.outcome.kind);
  takenFor(other.outcome.student.alias);
  if (other.outcome.kind === "known") return { ...other.outcome, rows };
  for (const row of rows) [row.alias, row.hand] = [other.outcome.student.alias, other.outcome.student.hand];
  return other.outcome;
}

function newStudent(
  alias: string,
  rows: readonly RowDraft[],
  answer: ImportAnswer,
  { log }: ImportContext,
): NewStudent {
  const years = new Set(rows.flatMap((row) => row.birthYearInFile ?? []));
  const [year] = years;
  if (years.size > 1)
    log.issue({ code: "birth-years-differ", row: rows[0]?.row ?? null, value: [...years].join(", "), args: { alias } });
  const hand = answer.option === "new-left" ? "left" : "right";
  for (const row of rows) [row.alias, row.hand] = [alias, hand];
  return { alias, hand, birthYear: years.size === 1 ? (year ?? null) : null, consentGivenBy: givenBy(answer) };
}
