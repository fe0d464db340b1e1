import type { RosterCell, RosterPage, RosterRow } from "@/lib/report/page-model";
import { type DrawnStrip, drawStrip } from "../strip/draw-strip";

/** A cell with its strip as the table draws it, and as the block of a phone does. */
interface DrawnCell extends Omit<RosterCell, "strip"> {
  /** What its strips show, in words. */
  readonly label: string;
  readonly inTable: DrawnStrip;
  readonly inBlock: DrawnStrip;
}

/** A student's row, drawn. */
export interface DrawnRow extends Omit<RosterRow, "cells"> {
  readonly cells: readonly (DrawnCell | null)[];
  /** As wide as a phone: the fundamental in hand, where it is among the columns. */
  readonly wide: { readonly drawn: DrawnStrip; readonly label: string } | null;
}

type Evidence = Pick<RosterPage["evidence"], "columns" | "rows">;

/** A proved change stands behind its strip; where there is none, where the level lies now. */
export function hasShape({ glyph }: Pick<RosterCell, "glyph">): boolean {
  return glyph !== "steady" && glyph !== "open";
}

/** The cell of the fundamental in hand, if it is among the columns. */
function cellInHand({ columns }: Evidence, { inHand, cells }: RosterRow): RosterCell | null {
  if (inHand === null) return null;
  const at = columns.findIndex((column) =>
    inHand.fundamentalId === undefined ? column.name === inHand.name : column.id === inHand.fundamentalId,
  );
  return cells[at] ?? null;
}

/** The rows as table and blocks draw them: lines to run through and words to say, and nothing that they are made of. */
export function drawRows(evidence: Evidence): readonly DrawnRow[] {
  return evidence.rows.map((row) => {
    const inHand = cellInHand(evidence, row);
    const cells = row.cells.map((cell): DrawnCell | null => {
      if (cell === null) return null;
      const { strip, ...said } = cell;
      return {
        ...said,
        label: strip.summary,
        inTable: drawStrip(strip, 94, hasShape(cell) ? "shape" : "level"),
        inBlock: drawStrip(strip, 94),
      };
    });
    const strip = inHand?.strip;
    return { ...row, cells, wide: strip ? { drawn: drawStrip(strip, 300, "level"), label: strip.summary } : null };
  });
}
