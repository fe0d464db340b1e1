import { COLUMN_LIMIT } from "./parse-csv";
import { SPAN_LIMIT, SPAN_ROWS } from "./workbook-limits";

/** A cell by its row, 1-based as in the sheet, and its 0-based column. */
export interface CellPlace {
  readonly row: number;
  readonly at: number;
}

export type ScannedSheet =
  | {
      readonly kind: "ok";
      readonly formulas: readonly CellPlace[];
      /** Cells that hold an error such as `#DIV/0!`, which a reader gives as blank. */
      readonly errors: readonly (CellPlace & { readonly text: string })[];
      readonly rows: number;
      readonly columns: number;
      /** Cells that hold anything. */
      readonly filled: number;
    }
  | { readonly kind: "refused"; readonly why: "broken" | "entities" | "far-cell" | "span"; readonly cell: string };

/** A column's letters as its 1-based number. */
function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters) number = number * 26 + letter.charCodeAt(0) - 64;
  return number;
}

const ADDRESS = /\sr\s*=\s*(?:"([^"]*)"|'([^']*)')/;

const ERROR = /\st\s*=\s*["']e["']/;

function textAfter(xml: string, end: number): string {
  const next = xml.indexOf("<", end);
  return xml.slice(end + 1, next === -1 ? end + 1 : next).slice(0, 20) || "#VALUE!";
}

/** The next mark of a sheet's text from a place on; remarks before the table are passed over. */
function nextTag(
  xml: string,
  from: number,
  table: number,
): { readonly start: number; readonly end: number } | "entities" | "broken" | null {
  let start = xml.indexOf("<", from);
  while (start !== -1) {
    if (xml[start + 1] === "!") {
      if (!xml.startsWith("<!--", start)) return xml.startsWith("<![", start) ? "broken" : "entities";
      // No program writes remarks among cells, and one inside a value would part it.
      if (start > table) return "broken";
      start = after(xml, "-->", start);
    } else {
      const end = xml.indexOf(">", start);
      return end === -1 ? null : { start, end };
    }
  }
  return null;
}

function after(xml: string, mark: string, from: number): number {
  const end = xml.indexOf(mark, from);
  return end === -1 ? -1 : xml.indexOf("<", end + mark.length);
}

/**
 * What a sheet's reader doesn't tell: which cells are formulas, and how far the sheet reaches. A sheet that reaches
 * farther than any table of readings is refused, since a reader keeps every blank cell in between; so is one that
 * defines entities.
 *
 * @param xml the part of the workbook that holds one sheet
 */
export function scanSheet(xml: string): ScannedSheet {
  const formulas: CellPlace[] = [];
  const errors: (CellPlace & { readonly text: string })[] = [];
  let [rows, columns, filled] = [0, 0, 0];
  const sheetData = xml.search(/<(?:[\w.-]+:)?sheetData[\s/>]/);
  const table = sheetData === -1 ? xml.length : sheetData;
  let cell: CellPlace | null = null;
  let isError = false;
  const refused = (why: "broken" | "entities" | "far-cell" | "span", where = ""): ScannedSheet => ({
    kind: "refused",
    why,
    cell: where,
  });
  for (let tag = nextTag(xml, 0, table); tag !== null; tag = nextTag(xml, tag.end, table)) {
    if (typeof tag === "string") return refused(tag);
    const text = xml.slice(tag.start + 1, tag.end);
    const name = /^(?:[\w.-]+:)?(row|c|f|v|is)(?=[\s/]|$)/.exec(text)?.[1];
    if (name === undefined) continue;
    if (name === "v" || name === "is") filled++;
    if (name === "v" && isError && cell) errors.push({ ...cell, text: textAfter(xml, tag.end) });
    if (name === "f" && cell && formulas.at(-1) !== cell) formulas.push(cell);
    if (name !== "row" && name !== "c") continue;
    const found = ADDRESS.exec(text);
    const address = found?.[1] ?? found?.[2] ?? "";
    if (name === "row") {
      const row = address === "" ? 0 : Number(address);
      if (!Number.isInteger(row) || row < 0) return refused("broken");
      if (row > SPAN_ROWS) return refused("far-cell", address.slice(0, 20));
      rows = Math.max(rows, row);
      continue;
    }
    const parts = /^([A-Z]{1,3})([1-9]\d{0,6})$/.exec(address);
    if (!parts) return refused("broken");
    const column = columnNumber(parts[1] ?? "");
    const row = Number(parts[2]);
    if (column > COLUMN_LIMIT || row > SPAN_ROWS) return refused("far-cell", address);
    rows = Math.max(rows, row);
    columns = Math.max(columns, column);
    cell = { row, at: column - 1 };
    isError = ERROR.test(text);
  }
  return rows * columns > SPAN_LIMIT ? refused("span") : { kind: "ok", formulas, errors, rows, columns, filled };
}
