/** A cell by its swing and its column, both counted from 0. */
export interface CellPlace {
  readonly swing: number;
  readonly column: number;
}

/** How many swings and columns can be reached; the first ones stand in a table of their own, the rest in another. */
export interface GridShape {
  readonly swings: number;
  readonly columns: number;
  /** Columns of the first table. */
  readonly first: number;
}

/** Tables whose lines are swings or fundamentals, and the same with one cell a line. */
export type GridLayout = "table-swings" | "table-columns" | "lines-swings" | "lines-columns";

/** Where a key goes: as an arrow points, on or back in the order of reading, to an end of the row. */
export type GridMove = "up" | "down" | "left" | "right" | "on" | "back" | "start" | "end";

function range(from: number, to: number): readonly number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, i) => from + i);
}

/**
 * All cells in the order of reading: one fundamental on every swing before the next, except where each line is a cell
 * and the lines go swing by swing.
 */
function reading(layout: GridLayout, { swings, columns, first }: GridShape): readonly CellPlace[] {
  if (layout !== "lines-swings")
    return range(0, columns).flatMap((column) => range(0, swings).map((swing) => ({ swing, column })));
  return [range(0, first), range(first, columns)].flatMap((part) =>
    range(0, swings).flatMap((swing) => part.map((column) => ({ swing, column }))),
  );
}

/** The cells of one row of a table, or of one head where each line is a cell. */
function row(layout: GridLayout, { swings, columns, first }: GridShape, at: CellPlace): readonly CellPlace[] {
  if (layout === "table-columns" || layout === "lines-columns")
    return range(0, swings).map((swing) => ({ swing, column: at.column }));
  const [from, to] = layout === "table-swings" ? [0, columns] : at.column < first ? [0, first] : [first, columns];
  return range(from, to).map((column) => ({ swing: at.swing, column }));
}

const STEPS = { up: [-1, 0], down: [1, 0], left: [0, -1], right: [0, 1] } as const;

function step(layout: GridLayout, at: CellPlace, move: keyof typeof STEPS): CellPlace {
  const [down, right] = STEPS[move];
  return layout === "table-swings"
    ? { swing: at.swing + down, column: at.column + right }
    : { swing: at.swing + right, column: at.column + down };
}

/**
 * The cell that a key leads to; null: there is none that way, so one stays.
 *
 * @param at where one is
 * @param move in a table, arrows go as they point; where each line is a cell, up and down go line by line and left and
 *   right nowhere
 */
export function nextCell(layout: GridLayout, shape: GridShape, at: CellPlace, move: GridMove): CellPlace | null {
  if (move === "start") return row(layout, shape, at)[0] ?? null;
  if (move === "end") return row(layout, shape, at).at(-1) ?? null;
  const lines = layout === "lines-swings" || layout === "lines-columns";
  if (lines && (move === "left" || move === "right")) return null;
  if (lines || move === "on" || move === "back") {
    const cells = reading(layout, shape);
    const here = cells.findIndex((cell) => cell.swing === at.swing && cell.column === at.column);
    const next = here + (move === "on" || move === "down" ? 1 : -1);
    return here < 0 ? null : (cells[next] ?? null);
  }
  if (move !== "up" && move !== "down" && move !== "left" && move !== "right") return null;
  const to = step(layout, at, move);
  const inside = to.swing >= 0 && to.swing < shape.swings && to.column >= 0 && to.column < shape.columns;
  return inside ? to : null;
}
