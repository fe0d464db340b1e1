import type { ImportPreview, ImportQuestion } from "@/lib/ingest/import-preview";
import { type Speaker, sayIssue, sayNote, sayQuestion } from "./import-page";

/** Entries of one kind that an answer lists; the rest are counted. */
const MOST_LISTED = 500;

function listed<T>(all: readonly T[], tell: (one: T) => unknown): { readonly list: unknown[]; readonly left: number } {
  return { list: all.slice(0, MOST_LISTED).map(tell), left: Math.max(0, all.length - MOST_LISTED) };
}

function tellQuestion(speaker: Speaker, question: ImportQuestion) {
  const { id, code, rows, answer, standing, options } = question;
  return {
    id,
    code,
    asks: sayQuestion(speaker, question),
    rows,
    answer,
    standing,
    options: options.map((option) => ({
      id: option.id,
      fields: option.fields.map(({ name, required }) => ({ name, required: required === "required" })),
    })),
  };
}

/** The preview of a file as data: the same that the page shows in words. */
export function tellPreview(speaker: Speaker, preview: ImportPreview) {
  const questions = listed(preview.questions, (question) => tellQuestion(speaker, question));
  const issues = listed(preview.issues, (issue) => ({
    code: issue.code,
    row: issue.row,
    rows: issue.rows,
    field: issue.column,
    value: issue.value,
    says: sayIssue(speaker, issue),
  }));
  const notes = listed(preview.notes, (note) => ({
    code: note.code,
    field: note.column,
    rows: note.rows,
    says: sayNote(speaker, note),
  }));
  return {
    rows: { all: preview.rowsTotal, ready: preview.rowsReady, waiting: preview.waitingRows.length },
    questions: questions.list,
    issues: issues.list,
    notes: notes.list,
    leftOff: { questions: questions.left, issues: issues.left, notes: notes.left },
    students: preview.summaries,
  };
}
