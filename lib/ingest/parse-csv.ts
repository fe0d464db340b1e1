import Papa from "papaparse";
import { restoreCell } from "./restore-cell";
import { SameText } from "./same-text";

export const DELIMITERS = [",", ";", "\t", "|"] as const;

export type Delimiter = (typeof DELIMITERS)[number];

/** Rows of one file; what lies beyond is named and stays out. */
export const ROW_LIMIT = 100_000;
export const COLUMN_LIMIT = 500;
/** After so many broken quotes the rest of the file is not taken apart any more. */
const BROKEN_QUOTE_LIMIT = 100;
/** A row longer than this many signs is taken for an unclosed quote; it bounds the work that a broken quote costs. */
const WINDOW = 128 * 1024;

export interface CsvRecord {
  /** 1-based; a row with a quoted line break counts once, as in a spreadsheet. */
  readonly row: number;
  readonly cells: readonly string[];
}

/** A stretch of the text that could not be taken apart. */
export interface CsvFault {
  readonly code: "unclosed-quote" | "too-many-broken-quotes" | "too-many-rows";
  readonly row: number;
  /** 1-based line of the text, as an editor counts. */
  readonly line: number;
  readonly text: string;
}

export interface ParsedCsv {
  readonly delimiter: Delimiter;
  /** The first row that holds anything; null in a file without one. */
  readonly header: CsvRecord | null;
  /** Rows under the header that hold anything. */
  readonly records: readonly CsvRecord[];
  readonly faults: readonly CsvFault[];
}

function countOutsideQuotes(line: string, sign: string): number {
  let count = 0;
  let quoted = false;
  for (const letter of line) {
    if (letter === '"') quoted = !quoted;
    else if (letter === sign && !quoted) count++;
  }
  return count;
}

function detectDelimiter(firstLine: string): Delimiter {
  const line = firstLine.slice(0, 20_000);
  let best: Delimiter = ",";
  let most = 0;
  for (const sign of DELIMITERS) {
    const count = countOutsideQuotes(line, sign);
    if (count > most) [best, most] = [sign, count];
  }
  return best;
}

/** Whether a quoted cell holds what looks like whole rows: a quote was opened by mistake and closed rows later. */
function swallowsRows(cells: readonly string[], delimiter: string, columns: number): boolean {
  if (columns < 2) return false;
  return cells.some(
    (cell) =>
      cell.includes("\n") &&
      cell.split("\n").some((line) => countOutsideQuotes(line, delimiter) >= Math.min(columns - 1, 3)),
  );
}

function countLines(text: string, to: number): number {
  let lines = 0;
  for (let at = text.indexOf("\n"); at !== -1 && at < to; at = text.indexOf("\n", at + 1)) lines++;
  return lines;
}

/** End of the stretch to take apart next: a line's end, far enough on that a whole row fits. */
function windowEnd(text: string, start: number): number {
  const end = text.indexOf("\n", start + WINDOW);
  return end === -1 ? text.length : end;
}

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === "");

/**
 * Takes a delimited text apart by RFC 4180, without a header's meaning. A row with a broken quote is set aside as a
 * fault and reading goes on at the next line, so that one stray quote doesn't swallow the rest.
 *
 * @param text line ends already one newline
 */
export function parseCsv(text: string): ParsedCsv {
  let start = 0;
  let row = 0;
  let named: string | undefined;
  const hint = /^[ \t]*"?sep=(.)"?[ \t]*(?:\n|$)/i.exec(text);
  if (hint) {
    named = hint[1];
    [start, row] = [hint[0].length, 1];
  }
  const firstLine = /[^\n]*\S[^\n]*/.exec(text.slice(start, start + 200_000))?.[0] ?? "";
  const delimiter = DELIMITERS.find((sign) => sign === named) ?? detectDelimiter(firstLine);

  const records: CsvRecord[] = [];
  const faults: CsvFault[] = [];
  const same = new SameText();
  let header: CsvRecord | null = null;
  let going = true;
  while (going && start < text.length) {
    const begun = start;
    const end = windowEnd(text, begun);
    let done = 0;
    start = end + 1;
    if (end === begun) row++;
    Papa.parse<string[]>(text.slice(begun, end), {
      header: false,
      delimiter,
      newline: "\n",
      step: ({ data: cells, errors, meta }, parser) => {
        const here = begun + done;
        const broken = errors.some((error) => error.type === "Quotes");
        if (broken && here > begun && end < text.length && errors.some((error) => error.code === "MissingQuotes")) {
          // The row may end beyond this stretch: begin the next one with it.
          start = here;
          parser.abort();
          return;
        }
        row++;
        const swallows = broken || swallowsRows(cells, delimiter, header?.cells.length ?? 0);
        // A blank line behind the last row that is read is no row too many.
        if (swallows || (records.length >= ROW_LIMIT && !isBlank(cells))) {
          const lineEnd = text.indexOf("\n", here);
          const next = lineEnd === -1 ? text.length : lineEnd;
          const code = !swallows
            ? "too-many-rows"
            : faults.length < BROKEN_QUOTE_LIMIT
              ? "unclosed-quote"
              : "too-many-broken-quotes";
          faults.push({ code, row, line: 1 + countLines(text, here), text: text.slice(here, next) });
          going = code === "unclosed-quote";
          start = next + 1;
          parser.abort();
          return;
        }
        done = meta.cursor;
        if (isBlank(cells)) return;
        const restored = cells.map((cell) => same.text(restoreCell(cell)));
        if (header === null) header = { row, cells: restored };
        else records.push({ row, cells: restored });
      },
    });
  }
  return { delimiter, header, records, faults };
}
