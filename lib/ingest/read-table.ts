import { decodeText, foreignKind } from "./decode-text";
import { type ImportLog, option } from "./import-log";
import type { ImportInput } from "./import-preview";
import { type CsvFault, type CsvRecord, type Delimiter, parseCsv, ROW_LIMIT } from "./parse-csv";
import { parseJsonTable } from "./parse-json-table";
import { readSheets } from "./read-sheets";

/** What a file is read from. */
export type TableSource = "text" | "workbook" | "json";

/** A file as one table of texts, whatever form it came in. */
export interface TextTable {
  readonly source: TableSource;
  readonly encoding: string | null;
  readonly delimiter: Delimiter | null;
  readonly header: CsvRecord | null;
  readonly records: readonly CsvRecord[];
  readonly faults: readonly CsvFault[];
  /** Whether something about the whole file has to be answered before any row is taken. */
  readonly state: "ready" | "waiting";
}

const NOTHING: Omit<TextTable, "source"> = {
  encoding: null,
  delimiter: null,
  header: null,
  records: [],
  faults: [],
  state: "ready",
};

/**
 * Reads a file as a table: delimited text in any common encoding, a workbook that was opened beforehand, or JSON. What
 * can't be read is told to the log; what the bytes don't settle is asked.
 *
 * @returns null: nothing of the file can be read, the log says why
 */
export function readTable(input: ImportInput, log: ImportLog): TextTable | null {
  if (foreignKind(input.bytes) === "workbook" && input.workbook) return readBook(input.workbook, log);
  const chosen = log.answerTo("encoding");
  const decoded = decodeText(input.bytes, chosen);
  if (decoded.kind !== "ok") {
    const [code, args] =
      decoded.kind === "too-big"
        ? ["too-big", { limit: decoded.limit, size: decoded.size }]
        : decoded.kind === "foreign"
          ? ["not-a-csv", { kind: decoded.what === "old-workbook" ? "oldWorkbook" : decoded.what }]
          : decoded.kind === "empty"
            ? ["empty-file", {}]
            : ["broken-encoding", { encoding: decoded.encoding.toUpperCase() }];
    log.issue({ code, row: null, args });
    return null;
  }
  const { text, encoding, choices } = decoded;
  const table = /^\s*(?:\[\s*[[{\]]|\{\s*")/.test(text.slice(0, 2000)) ? readJson(text, log) : readText(text);
  if (table === null) return null;
  const state = settleEncoding(table, encoding, choices, log);
  return { ...table, encoding, state };
}

function readBook(workbook: NonNullable<ImportInput["workbook"]>, log: ImportLog): TextTable | null {
  if (workbook.kind === "refused") {
    const why = workbook.why.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
    log.issue({ code: "workbook", row: null, args: { why, where: workbook.where } });
    return null;
  }
  const read = readSheets(workbook.sheets, log);
  return read && { ...NOTHING, source: "workbook", ...read };
}

function readJson(text: string, log: ImportLog): TextTable | null {
  const parsed = parseJsonTable(text);
  if (parsed.kind === "refused") {
    const why = parsed.why.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
    log.issue({
      code: "json",
      row: null,
      value: parsed.name,
      args: { why, object: parsed.row, line: parsed.line, limit: ROW_LIMIT },
    });
    return null;
  }
  return { ...NOTHING, source: "json", header: parsed.header, records: parsed.records };
}

function readText(text: string): TextTable {
  return { ...NOTHING, source: "text", ...parseCsv(text) };
}

/** Asks which letters are meant when the bytes allow several; says so when they had to be guessed. */
function settleEncoding(
  table: TextTable,
  encoding: string,
  choices: readonly { readonly encoding: string; readonly sample: string }[],
  log: ImportLog,
): "ready" | "waiting" {
  const row = table.header?.row ?? 1;
  if (choices.length === 0) {
    if (!encoding.startsWith("utf-")) log.note("read-as-encoding", row, null, { encoding });
    return "ready";
  }
  const answer = log.ask(
    {
      id: "encoding",
      code: "encoding",
      options: choices.map((choice) =>
        option(choice.encoding, { encoding: choice.encoding, sample: choice.sample }, undefined, "encoding"),
      ),
    },
    table.records.map((record) => record.row),
  );
  return answer ? "ready" : "waiting";
}
