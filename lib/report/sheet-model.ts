import type { Link } from "./basic-model";
import type { GridColumn } from "./grid-model";

/** A place to write on: what belongs there, and boxes to tick where there are only a few answers. */
export interface SheetBlank {
  readonly label: string;
  readonly boxes: readonly string[];
  readonly width: "short" | "long";
}

/** The reading sheet: the grid of a student's next session on one page of paper, without any value. */
export interface ReadingSheet {
  readonly title: string;
  readonly documentTitle: string;
  readonly lede: string;
  readonly back: Link;
  readonly swings: {
    readonly label: string;
    readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
  };
  /** Which fundamentals it has, to be chosen anew. */
  readonly choose: {
    readonly summary: string;
    readonly legend: string;
    readonly swings: string;
    readonly options: readonly { readonly value: string; readonly label: string; readonly ticked: "yes" | "no" }[];
    readonly submit: string;
  };
  /** What is left out, and why; empty: nothing. */
  readonly notice: string;
  readonly print: string;
  readonly blanks: readonly SheetBlank[];
  readonly films: readonly { readonly view: string; readonly blanks: readonly SheetBlank[] }[];
  readonly swingLabel: string;
  readonly plusHead: string;
  readonly columns: readonly GridColumn[];
  readonly rows: readonly string[];
  readonly noteLabel: string;
  readonly rules: readonly string[];
}
