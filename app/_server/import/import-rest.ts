import { ImportLog } from "@/lib/ingest/import-log";
import type { ImportInput, ImportPreview } from "@/lib/ingest/import-preview";
import type { CsvRecord } from "@/lib/ingest/parse-csv";
import { readTable } from "@/lib/ingest/read-table";
import { buildCsv } from "@/lib/report/csv";
import { type Speaker, sayIssue, sayNote, sayQuestion } from "./import-page";

interface ReasonedRows {
  readonly heads: readonly string[];
  readonly rows: readonly CsvRecord[];
  readonly reasonOf: (row: number) => string;
}

/** Every row of a file as it came, with all that was said of it. */
function reasonedRows(speaker: Speaker, input: ImportInput, preview: ImportPreview): ReasonedRows {
  const table = readTable(input, new ImportLog(input.answers));
  const reasons = new Map<number, string[]>();
  const add = (rows: readonly number[], reason: string): void => {
    for (const row of rows) {
      const kept = reasons.get(row);
      if (kept) kept.push(reason);
      else reasons.set(row, [reason]);
    }
  };
  for (const issue of preview.issues) add(issue.rows, sayIssue(speaker, issue));
  for (const question of preview.questions)
    if (question.answer === null || question.answer === "leave-out") add(question.rows, sayQuestion(speaker, question));
  for (const note of preview.notes) add(note.rows, sayNote(speaker, note));
  // A line with a quote that never closes comes back cell by cell as it stands, so that it can be mended.
  const broken = (table?.faults ?? [])
    .filter((fault) => fault.code === "unclosed-quote")
    .map((fault) => ({ row: fault.row, cells: fault.text.split(table?.delimiter ?? ",") }));
  return {
    heads: table?.header?.cells ?? [],
    rows: [...(table?.records ?? []), ...broken].sort((a, b) => a.row - b.row),
    reasonOf: (row) => (reasons.get(row) ?? []).join(" "),
  };
}

/** The rows that stay out, as they came, with the reasons in a last column; mended, the file can be imported. */
export function restOfImport(speaker: Speaker, input: ImportInput, preview: ImportPreview): string {
  const { heads, rows, reasonOf } = reasonedRows(speaker, input, preview);
  const rest = new Set(preview.restRows);
  return buildCsv(
    [...heads, speaker.words.say("import-page.reason")],
    rows.flatMap(({ row, cells }) => (rest.has(row) ? [[...filled(cells, heads.length), reasonOf(row)]] : [])),
  );
}

/** Every row with its fate: ready, waiting for an answer, or left out, and what was said of it. */
export function rowsOfImport(speaker: Speaker, input: ImportInput, preview: ImportPreview): string {
  const { words } = speaker;
  const { heads, rows, reasonOf } = reasonedRows(speaker, input, preview);
  const rest = new Set(preview.restRows);
  const waiting = new Set(preview.waitingRows);
  const fateOf = (row: number): string => (!rest.has(row) ? "ready" : waiting.has(row) ? "waiting" : "out");
  return buildCsv(
    [words.say("import-page.row"), words.say("import-page.fate"), words.say("import-page.reason"), ...heads],
    rows.map(({ row, cells }) => [row, words.say(`import-page.fate.${fateOf(row)}`), reasonOf(row), ...cells]),
  );
}

/** A short row is filled up, so that what comes behind it stands in its own column. */
function filled(cells: readonly string[], width: number): readonly string[] {
  return [...cells, ...Array.from({ length: Math.max(0, width - cells.length) }, () => "")];
}
