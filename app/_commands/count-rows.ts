import type { TableDigests } from "@/db/backup";

/** How many rows and tables of data a set of digests covers; the list of definitions is no data. */
export function countRows(digests: TableDigests): { readonly rows: number; readonly tables: number } {
  const tables = Object.entries(digests).filter(([name]) => !name.startsWith("sqlite_") && !name.startsWith("__"));
  return { tables: tables.length, rows: tables.reduce((sum, [, digest]) => sum + digest.rows, 0) };
}
