import type { Link, TableModel } from "./basic-model";
import { buildCsv } from "./csv";

function isPlain(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isTable(value: unknown): value is TableModel {
  return (
    isPlain(value) && typeof value.caption === "string" && Array.isArray(value.columns) && Array.isArray(value.rows)
  );
}

/** A table beside a download of its own needs no second one. */
function isServed(owner: Readonly<Record<string, unknown>>, key: string): boolean {
  return key === "table" && isPlain(owner.download);
}

function mapTables(value: unknown, change: (table: TableModel) => TableModel): unknown {
  if (Array.isArray(value)) return value.map((item) => mapTables(item, change));
  if (isTable(value)) return change(value);
  if (!isPlain(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [key, isServed(value, key) ? part : mapTables(part, change)]),
  );
}

/**
 * A page's model with a download at every table that has none, numbered from 0 in the order of the model's fields.
 *
 * @param model finished fields only: text, numbers, lists and objects of them
 */
export function withTableDownloads<T>(model: T, linkFor: (place: number, table: TableModel) => Link): T {
  let place = 0;
  return mapTables(model, (table) => ({ ...table, download: linkFor(place++, table) })) as T;
}

/** The table of that number in a page's model, as `withTableDownloads` numbers them; undefined: there is none. */
export function findTable(model: unknown, place: number): TableModel | undefined {
  const found: TableModel[] = [];
  mapTables(model, (table) => {
    found.push(table);
    return table;
  });
  return found[place];
}

/** A page's table as a file: the very cells of the page. */
export function buildTableCsv({ columns, rows }: TableModel): string {
  return buildCsv(
    columns.map((column) => column.label),
    rows.map((row) => row.cells),
  );
}
