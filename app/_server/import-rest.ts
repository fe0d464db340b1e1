import type { Fundamental } from "@/lib/domain/fundamental";
import { decodeText } from "@/lib/ingest/decode-text";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { parseCsv } from "@/lib/ingest/parse-csv";
import { buildCsv } from "@/lib/report/csv";
import type { Words } from "@/lib/words/catalogue";
import type { ImportDraft } from "./import-desk";
import { sayIssue, sayNote } from "./import-page";

/** The rows that stay out, as they came, with the reasons in a last column; mended, the file can be imported. */
export function restOfImport(
  words: Words,
  fundamentals: readonly Fundamental[],
  draft: ImportDraft,
  preview: ImportPreview,
): string {
  const decoded = decodeText(Uint8Array.from(Buffer.from(draft.file, "base64")));
  if (decoded.kind !== "ok") return "";
  const speaker = { words, fundamentals };
  const reasons = new Map<number, string[]>();
  const add = (rows: readonly number[], reason: string): void => {
    for (const row of rows) reasons.set(row, [...(reasons.get(row) ?? []), reason]);
  };
  for (const issue of preview.issues) add(issue.rows, sayIssue(speaker, issue));
  for (const question of preview.questions)
    if (question.answer === null || question.answer === "leave-out")
      add(question.rows, words.say(`import.question.${question.code}`, question.args));
  for (const note of preview.notes) add(note.rows, sayNote(speaker, note));
  const rest = new Set(preview.restRows);
  const { header, records } = parseCsv(decoded.text);
  return buildCsv(
    [...(header?.cells ?? []), words.say("import-page.reason")],
    records
      .filter((record) => rest.has(record.row))
      .map((record) => [...record.cells, (reasons.get(record.row) ?? []).join(" ")]),
  );
}
