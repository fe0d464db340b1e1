import { BUILT_IN } from "@/lib/domain/catalogue";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import type { ImportInput, ImportPreview, KnownStudent } from "@/lib/ingest/import-preview";
import { parseAnswers } from "@/lib/ingest/parse-answers";
import { parseImport } from "@/lib/ingest/parse-import";
import { wordsFor } from "@/lib/words/catalogue";

export const TODAY = "2026-09-12";

export const BEA: KnownStudent = { id: "s1", alias: "Bea", hand: "right", birthYear: 2013, consent: "given" };
export const LEO: KnownStudent = { id: "s2", alias: "Leo", hand: "left", birthYear: 2012, consent: "given" };
export const ZOË: KnownStudent = { id: "s3", alias: "Zoë", hand: "right", birthYear: null, consent: "given" };
export const NO_CONSENT: KnownStudent = { id: "s4", alias: "Uma", hand: "right", birthYear: 2014, consent: "none" };

/** Reads a file as the academy of Bea, Leo, Zoë and Uma would. */
export function readFile(
  content: string | Uint8Array,
  answers: Readonly<Record<string, string>> = {},
  change: Partial<ImportInput> = {},
): ImportPreview {
  return parseImport({
    fileName: "season.csv",
    bytes: typeof content === "string" ? new TextEncoder().encode(content) : content,
    contentHash: "hash",
    today: TODAY,
    students: [BEA, LEO, ZOË, NO_CONSENT],
    fundamentals: BUILT_IN,
    grouping: SHORT_LIST,
    answers: parseAnswers(Object.entries(answers)),
    defaults: { reader: "Wren" },
    ...change,
  });
}

/** A short text of every reading that would be saved: `Bea 2026-03-08 iron/1 swing 1 hinge 66`. */
export function planLines(preview: ImportPreview): readonly string[] {
  return (preview.plan?.sessions ?? []).flatMap(({ alias, session }) =>
    session.swings.flatMap((swing) =>
      swing.readings.map(
        (reading) =>
          `${alias} ${session.day} ${session.clubGroup}/${session.sequence} swing ${swing.number} ${reading.fundamentalId} ${reading.value ?? "n/m"}`,
      ),
    ),
  );
}

export const codes = (entries: readonly { readonly code: string }[]): readonly string[] =>
  entries.map(({ code }) => code);

/** Notes that say why a row brings nothing; the others tell only how a value was read. */
const REASONS = new Set([
  "no-reading",
  "left-out",
  "duplicate-row",
  "header-again",
  "derived-left-out",
  "same-reading-again",
  "waits-for-unit",
]);

/** Rows that would be saved nowhere and for which nothing says why. */
export function silentRows(preview: ImportPreview): readonly number[] {
  const reasons = preview.notes.filter(({ code }) => REASONS.has(code));
  const named = new Set([...preview.issues, ...preview.questions, ...reasons].flatMap(({ rows }) => rows));
  const whole = preview.issues.some(({ row }) => row === null);
  return whole ? [] : preview.restRows.filter((row) => !named.has(row));
}

/** Says everything that a preview holds; throws where a message was never written. */
export function sayAll(preview: ImportPreview): readonly string[] {
  const words = wordsFor("en");
  const say = (key: string, args: Readonly<Record<string, string | number>>) => words.say(key, args);
  return [
    ...preview.issues.flatMap(({ code, mend, args }) => [
      say(`import.issue.${code}`, args),
      ...(mend === null ? [] : [say(`import.mend.${mend}`, args)]),
    ]),
    ...preview.questions.flatMap(({ code, args, options, problem }) => [
      say(`import.question.${code}`, args),
      say(`import.why.${code}`, args),
      ...options.flatMap((option) => [
        say(`import.option.${option.code}`, option.args),
        ...option.fields.map((field) => say(`import.ask.${field.code}`, {})),
      ]),
      ...(problem === null ? [] : [say(`import.issue.${problem}`, args)]),
    ]),
    ...preview.notes.map(({ code, args }) => say(`import.note.${code}`, args)),
    ...preview.columns.map((column) =>
      column.field === null
        ? say(`import.left-out.${column.why ?? "unknown"}`, {})
        : say(`import.field.${column.field}`, {}),
    ),
    ...preview.columns.flatMap(({ unit }) => (unit === null ? [] : [say(`import.unit.${unit}`, {})])),
  ];
}
