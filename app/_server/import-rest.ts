import { decodeText } from "@/lib/ingest/decode-text";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { parseCsv } from "@/lib/ingest/parse-csv";
import { buildCsv } from "@/lib/report/csv";
import type { ImportDraft } from "./import-desk";
import { type Speaker, sayIssue, sayNote, sayQuestion } from "./import-page";

/** The rows that stay out, as they came, with the reasons in a last column; mended, the file can be imported. */
export function restOfImport(speaker: Speaker, draft: ImportDraft, preview: ImportPreview): string {
  const decoded = decodeText(Uint8Array.from(Buffer.from(draft.file, "base64")));
  if (decoded.kind !== "ok") return "";
  const reasons = new Map<number, string[]>();
  const add = (rows: readonly number[], reason: string): void => {
    for (const row of rows) reasons.set(row, [...(reasons.get(row) ?? []), reason]);
  };
  for (const issue of preview.issues) add(issue.rows, sayIssue(speaker, issue));
  for (const question of preview.questions)
    if (question.answer === null || question.answer === "leave-out") add(question.rows, sayQuestion(speaker, question));
  for (const note of preview.notes) add(note.rows, sayNote(speaker, note));
  const rest = new Set(preview.restRows);
  const { header, records, faults, delimiter } = parseCsv(decoded.text);
  // A line with a quote that never closes comes back cell by cell as it stands, so that it can be mended.
  const broken = faults
    .filter((fault) => fault.code === "unclosed-quote")
    .map((fault) => ({ row: fault.row, cells: fault.text.split(delimiter) }));
  return buildCsv(
    [...(header?.cells ?? []), speaker.words.say("import-page.reason")],
    [...records.filter((record) => rest.has(record.row)), ...broken]
      .sort((a, b) => a.row - b.row)
      .map((record) => [...record.cells, (reasons.get(record.row) ?? []).join(" ")]),
  );
}
