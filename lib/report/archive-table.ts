/** A cell before it is written. */
export type ArchiveCell = string | number | null;

/** One table of an archive: its name without an ending, its columns in order, its rows. */
export interface ArchiveTable {
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly ArchiveCell[])[];
}

/** A table from things and, for each column, what of a thing stands in it. */
export function table<T>(
  name: string,
  things: readonly T[],
  columns: Readonly<Record<string, (thing: T) => ArchiveCell>>,
): ArchiveTable {
  const cells = Object.values(columns);
  return { name, columns: Object.keys(columns), rows: things.map((thing) => cells.map((of) => of(thing))) };
}
