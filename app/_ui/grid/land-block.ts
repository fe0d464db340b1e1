import type { PastedBlock } from "./pasted-block";

/** Where a pasted block begins, as the lines and places of the table on the screen, and how many of each there are. */
export interface Landing {
  readonly line: number;
  readonly place: number;
  readonly lines: number;
  readonly places: number;
}

export type LandedBlock =
  | {
      readonly kind: "landed";
      /** What is to stand where, in the order of the block; blank cells of it are left out. */
      readonly cells: readonly { readonly line: number; readonly place: number; readonly text: string }[];
      /** Cells that something else stood in. */
      readonly changed: number;
      /** Blank cells of the block: what stands there stays. */
      readonly blank: number;
    }
  /** It reaches beyond the table, so nothing of it is taken. */
  | { readonly kind: "overflow"; readonly lines: number; readonly places: number }
  /** Every cell of it is blank. */
  | { readonly kind: "blank" };

/** How far a block reaches with what is in it: blank cells and rows at its end need no room. */
function reach(block: PastedBlock): { readonly lines: number; readonly places: number } {
  const widths = block.map((row) => row.findLastIndex((cell) => cell !== "") + 1);
  return { lines: widths.findLastIndex((width) => width > 0) + 1, places: Math.max(0, ...widths) };
}

/**
 * How a pasted block lies in the table from a cell on; it is taken whole or not at all.
 *
 * @param standing what stands in a cell of the table
 */
export function landBlock(
  block: PastedBlock,
  at: Landing,
  standing: (line: number, place: number) => string,
): LandedBlock {
  const { lines, places } = reach(block);
  if (lines === 0) return { kind: "blank" };
  if (at.line + lines > at.lines || at.place + places > at.places) return { kind: "overflow", lines, places };
  const all = block
    .slice(0, lines)
    .flatMap((row, i) =>
      Array.from({ length: places }, (_, j) => ({ line: at.line + i, place: at.place + j, text: row[j] ?? "" })),
    );
  const cells = all.filter((cell) => cell.text !== "");
  const changed = cells.filter(({ line, place, text }) => !["", text].includes(standing(line, place).trim())).length;
  return { kind: "landed", cells, changed, blank: all.length - cells.length };
}
