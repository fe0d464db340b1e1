import type { Link } from "./basic-model";
import type { Drawing } from "./drawing-model";

/** What the lines of the grid are: swings, or fundamentals by their checkpoint. */
export const ARRANGEMENTS = ["swings", "columns"] as const;

/** What the lines of the grid are. */
export type Arrangement = (typeof ARRANGEMENTS)[number];

/** One fundamental of the grid. Nothing in it follows from what is on file of the student but its place. */
export interface GridColumn {
  readonly fundamentalId: string;
  readonly label: string;
  /** Why it stands among the first where a grid is one of several; empty: nothing is said. */
  readonly mark: string;
  readonly unit: string;
  /** What plus means, in words, and drawn for the student's hand. */
  readonly sign: string;
  readonly drawing: Drawing;
  /** The checkpoint and view that it is read at, and its place among the checkpoints of a swing. */
  readonly checkpoint: string;
  readonly checkpointOrder: number;
  /** What is plausible for anyone. */
  readonly plausible: { readonly low: number; readonly high: number };
}

/** One cell of the grid. */
export interface GridCell {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  /** What is wrong and what to do; empty: nothing. */
  readonly error: string;
  /** Whether its value is unusual in anyone. */
  readonly asked: "yes" | "no";
  /** Whether its value, as it stands, was said to be right though unusual. */
  readonly confirmed: "yes" | "no";
}

/** Every sentence that the grid says while one types; gaps are written {so}. */
export interface GridWords {
  /** {answered}, {begun} */
  readonly count: string;
  /** {name}, {swing} */
  readonly where: string;
  readonly nowhere: string;
  /** {label}, {value} */
  readonly unusual: string;
  /** {value} */
  readonly right: string;
  readonly allRight: string;
  /** {filled}, {changed}, {blank} */
  readonly pasted: string;
  /** {lines}, {places}, {roomLines}, {roomPlaces} */
  readonly overflow: string;
  readonly overflowRest: string;
  readonly pastedBlank: string;
  /** {undone}, {kept} */
  readonly undone: string;
  readonly undo: string;
  readonly restStays: string;
  readonly moreSwing: string;
  /** {lines} */
  readonly noMoreSwing: string;
  readonly arrangement: string;
  readonly arrange: Readonly<Record<Arrangement, string>>;
  readonly turn: string;
  readonly letters: string;
  readonly plusHead: string;
  readonly fundamentalHead: string;
  readonly keysHeading: string;
  /** The keys of the browser's own kind, and the single letters. */
  readonly keys: readonly { readonly keys: readonly string[]; readonly does: string }[];
  readonly letterKeys: readonly { readonly keys: readonly string[]; readonly does: string }[];
}

/** Swings by fundamentals, one cell a reading. */
export interface GridModel {
  readonly margin: string;
  readonly explains: string;
  readonly caption: string;
  readonly swingLabel: string;
  /** Those that matter now, then the rest. */
  readonly columns: readonly GridColumn[];
  /** How many matter now. */
  readonly first: number;
  /** Null: there is no rest. */
  readonly rest: { readonly summary: string; readonly caption: string; readonly open: "yes" | "no" } | null;
  /** All swings that can be entered, cells in the order of the columns. */
  readonly rows: readonly { readonly label: string; readonly cells: readonly GridCell[] }[];
  /** How many swings are shown at first. */
  readonly shown: number;
  readonly arrangement: Arrangement;
  /** Whether single letters are keys within a cell. */
  readonly letters: "on" | "off";
  /** Whether all unusual values were said to be right at once; null: each is asked by itself. */
  readonly allRight: "yes" | "no" | null;
  /** The same on paper; null: there is none. */
  readonly sheet: Link | null;
  readonly words: GridWords;
}
