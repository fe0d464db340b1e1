/** How far one is. */
export interface CellCount {
  /** Cells that say something: a value, or that it can't be measured. */
  readonly answered: number;
  /** Cells of the swings and fundamentals that were begun. */
  readonly begun: number;
}

/**
 * Answered cells of those begun: every swing that has an answer by every fundamental that has one.
 *
 * @param texts what stands in each cell, swing by swing, columns in order
 */
export function countCells(texts: readonly (readonly string[])[]): CellCount {
  const rows = texts.map((row) => row.map((text) => text.trim() !== ""));
  const swings = rows.filter((row) => row.includes(true)).length;
  const columns = (rows[0] ?? []).filter((_, column) => rows.some((row) => row[column])).length;
  return { answered: rows.flat().filter((answer) => answer).length, begun: swings * columns };
}
