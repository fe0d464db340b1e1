import type { ImportPlan } from "@/lib/domain/session-entry";
import { type BuiltSession, buildSessions } from "./build-sessions";
import { buildSheet } from "./build-sheet";
import { decodeText } from "./decode-text";
import { ImportLog, option } from "./import-log";
import type { ImportColumn, ImportInput, ImportPreview, ImportStudentSummary } from "./import-preview";
import { COLUMN_LIMIT, type CsvFault, type CsvRecord, parseCsv, ROW_LIMIT } from "./parse-csv";
import { type ReadColumn, type ReadColumns, readColumns } from "./read-columns";
import { readRows } from "./read-rows";
import { groupBy, type ImportContext, isOpen, type RowDraft } from "./row-draft";
import { settleCircumstances } from "./settle-circumstances";
import { settleClubs } from "./settle-clubs";
import { settleDays } from "./settle-days";
import { settlePlausible } from "./settle-plausible";
import { settleSigns } from "./settle-signs";
import { type SettledStudents, settleStudents } from "./settle-students";
import { settleNumbers, settleUnits } from "./settle-values";
import { rowRanges, shownValue } from "./text-key";

const EMPTY: ImportPreview = {
  form: null,
  encoding: null,
  delimiter: null,
  columns: [],
  rowsTotal: 0,
  rowsReady: 0,
  restRows: [],
  plan: null,
  consents: [],
  issues: [],
  questions: [],
  notes: [],
  summaries: [],
  sheet: [],
};

/**
 * What a file of readings would bring in, and what it needs answered first. Writes nothing, throws at no file: every
 * row is ready, or named by an issue, a question or a note.
 */
export function parseImport(input: ImportInput): ImportPreview {
  const log = new ImportLog(input.answers);
  const decoded = decodeText(input.bytes);
  if (decoded.kind !== "ok") {
    const [code, args] =
      decoded.kind === "too-big"
        ? ["too-big", { limit: decoded.limit, size: decoded.size }]
        : decoded.kind === "foreign"
          ? ["not-a-csv", { kind: decoded.what }]
          : decoded.kind === "empty"
            ? ["empty-file", {}]
            : ["broken-encoding", { encoding: decoded.encoding.toUpperCase() }];
    log.issue({ code, row: null, args });
    return { ...EMPTY, issues: log.finish().issues };
  }
  const { header, records, faults, delimiter } = parseCsv(decoded.text);
  const base = { ...EMPTY, encoding: decoded.encoding, delimiter };
  for (const fault of faults) tellFault(fault, log);
  if (!header || header.cells.length > COLUMN_LIMIT) {
    if (header)
      log.issue({
        code: "too-many-columns",
        row: header.row,
        args: { columns: header.cells.length, limit: COLUMN_LIMIT },
      });
    else if (faults.length === 0) log.issue({ code: "empty-file", row: null });
    return { ...base, issues: log.finish().issues };
  }
  if (decoded.encoding === "windows-1252") log.note("read-as-windows-1252", header.row);
  const { form, columns } = settleColumns(header, records, input, log);
  const rowsTotal = records.length + faults.length;
  const shown = { ...base, form, columns: columns.map((column) => toImportColumn(column, records)), rowsTotal };
  if (form === null || records.length === 0) {
    if (form === null) log.issue({ code: "no-readings-column", row: null });
    if (records.length === 0 && faults.length === 0) log.issue({ code: "headers-only", row: null });
    const { issues, questions, notes } = log.finish();
    const restRows = [...records, ...faults].map(({ row }) => row).sort((a, b) => a - b);
    return { ...shown, restRows, issues, questions, notes };
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

/** Reads the columns, and asks about headers that nearly say something; unanswered, such a column stays out. */
function settleColumns(
  header: CsvRecord,
  records: readonly CsvRecord[],
  input: ImportInput,
  log: ImportLog,
): ReadColumns {
  const id = (at: number) => `column:${at + 1}`;
  const taken = new Set(
    header.cells.flatMap((_, at) => (input.answers.get(id(at))?.option === "read-as-column" ? [at] : [])),
  );
  const read = readColumns(header.cells, input.fundamentals, taken);
  for (const column of read.columns) {
    const { suggestion, at } = column;
    if (!suggestion) continue;
    const filled = records.flatMap(({ row, cells }) => ((cells[at] ?? "").trim() === "" ? [] : [row]));
    const isField = typeof suggestion === "string";
    const args = { value: column.header, ...(isField ? { field: suggestion } : { fundamental: suggestion.id }) };
    log.ask(
      {
        id: id(at),
        code: isField ? "column-field" : "column-fundamental",
        args,
        options: [
          option("read-as-column", args, undefined, isField ? "read-as-field" : "read-as-fundamental"),
          option("leave-out"),
        ],
        standing: "leave-out",
        at,
      },
      filled,
    );
  }
  return read;
}

function toImportColumn(column: ReadColumn, records: readonly CsvRecord[]): ImportColumn {
  const filled = records.find(({ cells }) => (cells[column.at] ?? "").trim() !== "");
  const { suggestion, fundamental } = column;
  const own = column.field === "measure" ? (fundamental?.unit ?? null) : column.field === "stanceWidth" ? "cm" : null;
  return {
    header: column.header,
    place: column.at + 1,
    field: column.field === "measure" ? "fundamental" : column.field,
    fundamentalId: fundamental?.id ?? null,
    unit: own === null ? null : column.unit === null || column.unit === "percent" ? own : column.unit,
    why: column.why,
    suggestion: suggestion === null ? null : typeof suggestion === "string" ? suggestion : suggestion.id,
    sample: shownValue(filled?.cells[column.at] ?? ""),
  };
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
          answers: JSON.stringify({
            answers: questions.flatMap(({ id, answer, answerFields, standing }) =>
              (answer ?? standing) === null
                ? []
                : [{ id, option: answer ?? standing, fields: Object.fromEntries(answerFields) }],
            ),
            changed: told(notes),
            left: told(issues),
          }),
        };
  return {
    ...shown,
    rowsReady: ready.size,
    restRows,
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
