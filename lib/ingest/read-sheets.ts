import { type ImportLog, option } from "./import-log";
import { COLUMN_LIMIT, type CsvFault, type CsvRecord, ROW_LIMIT } from "./parse-csv";
import type { SheetTable } from "./read-workbook";
import { shownValue, wordKey } from "./text-key";

export interface ReadSheets {
  readonly header: CsvRecord | null;
  readonly records: readonly CsvRecord[];
  readonly faults: readonly CsvFault[];
  readonly state: "ready" | "waiting";
}

const ALL = "all";

const composed = (cell: string): string => cell.normalize("NFC").replace(/\r\n?/g, "\n");
const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === "");

/** The rows of a sheet that hold anything, numbered as in the sheet. */
function recordsOf({ rows }: SheetTable): readonly CsvRecord[] {
  return rows.flatMap((cells, at) => (isBlank(cells) ? [] : [{ row: at + 1, cells: cells.map(composed) }]));
}

const headKey = (record: CsvRecord | undefined): string => (record?.cells ?? []).map(wordKey).join("\u0000");

/**
 * A workbook's sheets as one table. Several filled sheets are asked about; those with the same heads can be read
 * together, their rows counted on. Hidden sheets are named and read only when they are chosen.
 *
 * @returns null: the workbook holds nothing
 */
export function readSheets(sheets: readonly SheetTable[], log: ImportLog): ReadSheets | null {
  const tables = sheets
    .map((sheet) => ({ sheet, records: recordsOf(sheet) }))
    .filter(({ records }) => records.length > 0);
  const [first] = tables;
  if (!first) {
    log.issue({ code: "empty-file", row: null });
    return null;
  }
  const hidden = tables.filter(({ sheet }) => sheet.seen === "hidden").map(({ sheet }) => shownValue(sheet.name));
  const shown = tables.filter(({ sheet }) => sheet.seen === "shown");
  const alike = shown.filter(({ records }) => headKey(records[0]) === headKey(shown[0]?.records[0]));
  const chosen = chooseSheets();
  if (hidden.length > 0) log.note("hidden-sheets", first.records[0]?.row ?? 1, null, { sheets: hidden.join(", ") });
  return chosen ? joinSheets(chosen, log) : { header: null, records: [], faults: [], state: "waiting" };

  function chooseSheets() {
    if (tables.length === 1 && shown.length === 1) return tables;
    const options = tables.map(({ sheet, records }, at) =>
      option(
        `sheet-${at + 1}`,
        { sheet: shownValue(sheet.name), rows: records.length - 1, seen: sheet.seen },
        undefined,
        "sheet",
      ),
    );
    const together =
      alike.length > 1
        ? [
            option(
              ALL,
              { sheets: alike.map(({ sheet }) => shownValue(sheet.name)).join(", ") },
              undefined,
              "sheets-together",
            ),
          ]
        : [];
    // The only sheet that is shown stands unasked; a hidden one has to be chosen.
    const only = shown.length === 1 ? tables.findIndex(({ sheet }) => sheet.seen === "shown") : -1;
    const standing = only === -1 ? null : `sheet-${only + 1}`;
    const answer = log.ask({ id: "sheet", code: "sheet", options: [...together, ...options], standing }, []);
    if (answer?.option === ALL) return alike;
    const one = tables.find((_, at) => `sheet-${at + 1}` === answer?.option);
    return one ? [one] : null;
  }
}

interface Table {
  readonly sheet: SheetTable;
  readonly records: readonly CsvRecord[];
}

function joinSheets(tables: readonly Table[], log: ImportLog): ReadSheets {
  const header = tables[0]?.records[0] ?? null;
  const records: CsvRecord[] = [];
  const faults: CsvFault[] = [];
  let shift = 0;
  for (const { sheet, records: all } of tables) {
    const [head, ...rest] = all;
    for (const { row, cells } of rest) {
      if (records.length < ROW_LIMIT) records.push({ row: row + shift, cells });
      else if (faults.length === 0)
        faults.push({ code: "too-many-rows", row: row + shift, line: row, text: cells.join("\t").slice(0, 200) });
    }
    if (tables.length > 1 && rest.length > 0) {
      const args = { sheet: shownValue(sheet.name), from: rest[0]?.row ?? 0, first: (rest[0]?.row ?? 0) + shift };
      log.note("sheet-rows", (rest[0]?.row ?? 0) + shift, null, args, sheet.name);
    }
    tellFormulas(sheet, head?.row ?? 0, header, shift, log);
    shift += sheet.rows.length;
  }
  return { header, records, faults, state: "ready" };
}

/** A formula's cell holds what the program for sheets last worked out; that is taken, and said. */
function tellFormulas(sheet: SheetTable, head: number, header: CsvRecord | null, shift: number, log: ImportLog): void {
  for (const { row, at } of sheet.formulas) {
    const value = sheet.rows[row - 1]?.[at] ?? "";
    // What failed is told as the value that it is.
    if (row <= head || at >= COLUMN_LIMIT || value.startsWith("#")) continue;
    const column = shownValue(header?.cells[at] ?? "");
    if (value.trim() === "") log.issue({ code: "formula-without-value", row: row + shift, column, at });
    else log.note("formula-value", row + shift, column, { value: shownValue(value) });
  }
}
