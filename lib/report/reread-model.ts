import type { ChartFiles, Link, TableModel } from "./basic-model";
import type { Tick } from "./chart-model";

/** A heading with a table, and a link a row. */
export interface LinkedTable {
  readonly margin: string;
  readonly explains: string;
  readonly heading: string;
  readonly table: TableModel;
  readonly linkLabel: string;
  /** One a row. */
  readonly links: readonly Link[];
}

/** The page of all that was read again. */
export interface RereadsPage {
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly start: Link;
  readonly draws: LinkedTable | null;
  readonly measured: LinkedTable;
  /** Every pair as a file; null: there is none. */
  readonly download: Link | null;
  readonly readers: Omit<LinkedTable, "linkLabel" | "links"> | null;
}

/** Differences of two readings by the size of what was read. */
export interface DifferencePlot {
  readonly sentence: string;
  readonly xTitle: string;
  readonly yTitle: string;
  readonly x: { readonly from: number; readonly to: number; readonly ticks: readonly Tick[] };
  readonly y: { readonly from: number; readonly to: number; readonly ticks: readonly Tick[] };
  /** A dot for all pairs of one place. */
  readonly dots: readonly { readonly x: number; readonly y: number; readonly pairs: number }[];
  /** Where the mean difference lies, and within what 95 of 100 lie; null: too few to say. */
  readonly bias: { readonly at: number; readonly label: string } | null;
  readonly limits: readonly [number, number] | null;
  readonly tableLabel: string;
  readonly table: TableModel;
  readonly files: ChartFiles;
}

/** What was read again at one level, of one fundamental. */
export interface RereadLevelPart {
  readonly margin: string;
  readonly explains: string;
  readonly heading: string;
  /** Null: nothing was read again at this level. */
  readonly table: TableModel | null;
  readonly plot: DifferencePlot | null;
}

/** The results of one fundamental. */
export interface ReaderErrorPage {
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly judged: {
    readonly margin: string;
    readonly heading: string;
    readonly text: string;
    readonly table: TableModel | null;
  };
  readonly film: RereadLevelPart;
  readonly still: RereadLevelPart;
  readonly two: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly text: string;
    readonly table: TableModel | null;
  };
}
