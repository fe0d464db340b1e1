import type { ImportPlan } from "@/lib/domain/session-entry";
import { type BuiltSession, buildSessions } from "./build-sessions";
import { buildSheet } from "./build-sheet";
import { columnChoice } from "./column-choice";
import { ImportLog } from "./import-log";
import type { ImportInput, ImportPreview, ImportStudentSummary } from "./import-preview";
import { COLUMN_LIMIT, type CsvFault, type CsvRecord, ROW_LIMIT } from "./parse-csv";
import { readRows } from "./read-rows";
import { readTable } from "./read-table";
import { NO_PREVIEW } from "./refused-preview";
import { groupBy, type ImportContext, isOpen, type RowDraft } from "./row-draft";
import { settleCircumstances } from "./settle-circumstances";
import { settleClubs } from "./settle-clubs";
import { settleColumns, toImportColumn } from "./settle-columns";
import { settleDays } from "./settle-days";
import { settlePlausible } from "./settle-plausible";
import { settleSigns } from "./settle-signs";
import { type SettledStudents, settleStudents } from "./settle-students";
import { settleNumbers, settleUnits } from "./settle-values";
import { rowRanges } from "./text-key";

/**
 * What a file of readings would bring in, and what it needs answered first. Writes nothing, throws at no file: every
 * row is ready, or named by an issue, a question or a note.
 */
export function parseImport(input: ImportInput): ImportPreview {
  const log = new ImportLog(input.answers);
  const table = readTable(input, log);
  if (!table) return { ...NO_PREVIEW, issues: log.finish().issues };
  const { header, records, faults, delimiter, source, encoding } = table;
  const heads = header?.cells ?? [];
  const known = input.sourceOf?.(heads) ?? null;
  if (known) log.recall(known.answers);
  const base = {
    ...NO_PREVIEW,
    source,
    encoding,
    delimiter,
    heads,
    remembered: known && { fileName: known.fileName, day: known.day },
  };
  for (const fault of faults) tellFault(fault, log);
  if (!header || header.cells.length > COLUMN_LIMIT) {
    if (header)
      log.issue({
        code: "too-many-columns",
        row: header.row,
        args: { columns: header.cells.length, limit: COLUMN_LIMIT },
      });
    else if (faults.length === 0 && table.state === "ready") log.issue({ code: "empty-file", row: null });
    const { issues, questions, notes } = log.finish();
    return { ...base, issues, questions, notes };
  }
  const { form, columns } = settleColumns(header, records, input, log);
  const rowsTotal = records.length + faults.length;
  const shown = { ...base, form, columns: columns.map((column) => toImportColumn(column, records)), rowsTotal };
  if (form === null || records.length === 0 || table.state === "waiting") {
    if (form === null) log.issue({ code: "no-readings-column", row: null });
    if (records.length === 0 && faults.length === 0) log.issue({ code: "headers-only", row: null });
    const { issues, questions, notes } = log.finish();
    const restRows = [...records, ...faults].map(({ row }) => row).sort((a, b) => a - b);
    const waitingRows = table.state === "waiting" ? records.map(({ row }) => row) : [];
    return { ...shown, restRows, waitingRows, issues, questions, notes };
  }
  const context: ImportContext = { input, form, columns, log };
  const drafts = readRows(header, records, context);
  const students = settleRows(drafts, context);
  const sessions = buildSessions(
    drafts.filter((row) => row.state === "alive"),
    context,
  );
  return finish({ shown, context, records, faults, drafts, students, sessions });
}

function settleRows(drafts: readonly RowDraft[], context: ImportContext): SettledStudents {
  settleDays(drafts, context);
  const students = settleStudents(drafts, context);
  settleClubs(drafts, context);
  settleCircumstances(drafts, context);
  const readings = drafts.filter(isOpen).flatMap((row) => row.readings);
  settleNumbers(readings, context);
  settleUnits(readings, context);
  settleSigns(readings, context);
  settlePlausible(readings, context);
  return students;
}

function tellFault({ code, row, line, text }: CsvFault, log: ImportLog): void {
  log.issue({ code, row, value: text, args: { line, limit: ROW_LIMIT } });
}

interface Settled {
  readonly shown: ImportPreview;
  readonly context: ImportContext;
  readonly records: readonly CsvRecord[];
  readonly faults: readonly CsvFault[];
  readonly drafts: readonly RowDraft[];
  readonly students: SettledStudents;
  readonly sessions: readonly BuiltSession[];
}

function finish({ shown, context, records, faults, drafts, students, sessions }: Settled): ImportPreview {
  const { input, log, form } = context;
  const ready = new Set<number>();
  for (const row of drafts) {
    if (row.state !== "alive") continue;
    if (row.readings.some(({ state }) => state === "alive")) ready.add(row.row);
    else if (row.readings.length === 0 && !log.isTold(row.row)) log.note("no-reading", row.row);
  }
  const restRows = [...records, ...faults].flatMap(({ row }) => (ready.has(row) ? [] : [row])).sort((a, b) => a - b);
  const { issues, issuePlaces, questions, questionPlaces, notes } = log.finish();
  const rest = new Set(restRows);
  const open = questions.filter((question) => question.answer === null && question.standing === null);
  const waitingRows = [...new Set(open.flatMap(({ rows }) => rows.filter((row) => rest.has(row))))].sort(
    (a, b) => a - b,
  );
  const used = new Set(sessions.map(({ alias }) => alias));
  const told = (entries: readonly { code: string; column: string | null; args: object; rows: readonly number[] }[]) =>
    entries.map(({ code, column, args, rows }) => ({ code, column, args: { ...args, rows: rowRanges(rows) } }));
  const plan: ImportPlan | null =
    sessions.length === 0
      ? null
      : {
          fileName: input.fileName,
          contentHash: input.contentHash,
          form,
          rows: ready.size,
          newStudents: students.newStudents.filter(({ alias }) => used.has(alias)),
          sessions,
          whose: students.whose,
          answers: JSON.stringify({
            answers: questions.flatMap(({ id, answer, answerFields, standing }) =>
              (answer ?? standing) === null
                ? []
                : [{ id, option: answer ?? standing, fields: Object.fromEntries(answerFields) }],
            ),
            columns: context.columns.map(({ header, field, fundamental, unit }) => ({
              header,
              as: columnChoice(field, fundamental),
              unit,
            })),
            changed: told(notes),
            left: told(issues),
          }),
        };
  return {
    ...shown,
    rowsReady: ready.size,
    restRows,
    waitingRows,
    plan,
    consents: students.consents,
    issues,
    questions,
    notes,
    summaries: summaries(sessions, new Set(students.newStudents.map(({ alias }) => alias))),
    sheet: buildSheet(records, issues, issuePlaces, questions, questionPlaces),
  };
}

function summaries(sessions: readonly BuiltSession[], fresh: ReadonlySet<string>): readonly ImportStudentSummary[] {
  return [...groupBy(sessions, ({ alias }) => alias)].map(([alias, group]) => {
    const days = group.map(({ session }) => session.day).sort();
    const swings = group.flatMap(({ session }) => session.swings);
    return {
      alias,
      isNew: fresh.has(alias) ? "new" : "known",
      sessions: group.length,
      swings: swings.length,
      readings: swings.reduce((sum, swing) => sum + swing.readings.length, 0),
      firstDay: days[0] ?? "",
      lastDay: days.at(-1) ?? "",
    };
  });
}
