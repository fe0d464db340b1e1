import { choiceOf, columnChoice, unitsFor } from "./column-choice";
import { type ImportLog, option } from "./import-log";
import type { ImportColumn, ImportInput } from "./import-preview";
import type { CsvRecord } from "./parse-csv";
import type { FileUnit } from "./parse-unit";
import { type ReadColumn, type ReadColumns, readColumns } from "./read-columns";
import { shownValue } from "./text-key";

/** Reads the columns, and asks about headers that nearly say something; unanswered, such a column stays out. */
export function settleColumns(
  header: CsvRecord,
  records: readonly CsvRecord[],
  input: ImportInput,
  log: ImportLog,
): ReadColumns {
  const id = (at: number) => `column:${at + 1}`;
  const taken = new Set(header.cells.flatMap((_, at) => (log.answerTo(id(at)) === "read-as-column" ? [at] : [])));
  const choices = header.cells.map((_, at) => choiceOf(at, log.answers, input.fundamentals));
  const read = readColumns(header.cells, input.fundamentals, taken, choices);
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

/** Units of a stance width. */
const LENGTHS: readonly FileUnit[] = ["cm", "mm", "inch"];
/** In long form a column of values holds several fundamentals: `deg` stands for each one's own unit. */
const VALUE_UNITS: readonly FileUnit[] = ["rad", "fraction", "cm", "mm", "inch"];

function unitsOf({ field, fundamental }: ReadColumn): readonly FileUnit[] {
  if (field === "measure" && fundamental) return unitsFor(fundamental.unit);
  return field === "stanceWidth" ? LENGTHS : field === "value" ? VALUE_UNITS : [];
}

/** A column as the preview shows it. */
export function toImportColumn(column: ReadColumn, records: readonly CsvRecord[]): ImportColumn {
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
    choice: columnChoice(column.field, column.fundamental),
    unitChosen: column.unitSaid === "chosen" ? column.unit : null,
    units: unitsOf(column),
  };
}
