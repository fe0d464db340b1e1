import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import type { Words } from "@/lib/words/catalogue";
import { buildGridColumn } from "./build-grid-column";
import { buildGridWords } from "./build-grid-words";
import type { Arrangement, GridCell, GridModel } from "./grid-model";

/** What a grid is laid out from. */
export interface GridPlan {
  readonly caption: string;
  readonly explains: string;
  /** Read from stills; those that matter now first. */
  readonly columns: readonly Fundamental[];
  readonly first: number;
  /** Whether the rest is open even where nothing stands in it. */
  readonly rest: "open" | "shut";
  readonly hand: Hand;
  /** Numbers of the swings that can be entered, and how many of them are shown where no more are used. */
  readonly swings: readonly number[];
  readonly shown: number;
  readonly cell: (swing: number, fundamental: Fundamental) => GridCell;
  readonly arrangement: Arrangement;
  readonly letters: "on" | "off";
  readonly allRight: GridModel["allRight"];
  readonly sheet: GridModel["sheet"];
}

/** A grid with its heads, its cells and its words; the rest is open where something stands in it. */
export function layGrid(words: Words, plan: GridPlan): GridModel {
  const { columns, first } = plan;
  const rows = plan.swings.map((number) => ({
    label: words.say("session-form.swing-number", { number }),
    cells: columns.map((fundamental) => plan.cell(number, fundamental)),
  }));
  const used = (cell: GridCell): boolean => cell.value !== "" || cell.error !== "";
  const rest = columns.length - first;
  const restUsed = rows.some((row) => row.cells.slice(first).some(used));
  return {
    margin: words.say("grid.margin"),
    explains: plan.explains,
    caption: plan.caption,
    swingLabel: words.say("session-form.swing"),
    columns: columns.map((fundamental) => buildGridColumn(words, fundamental, plan.hand)),
    first,
    rest:
      rest > 0
        ? {
            summary: words.say("grid.rest", { fundamentals: rest }),
            caption: words.say("grid.caption.rest"),
            open: plan.rest === "open" || restUsed ? "yes" : "no",
          }
        : null,
    rows,
    shown: Math.max(plan.shown, rows.findLastIndex((row) => row.cells.some(used)) + 1),
    arrangement: plan.arrangement,
    letters: plan.letters,
    allRight: plan.allRight,
    sheet: plan.sheet,
    words: buildGridWords(words),
  };
}
