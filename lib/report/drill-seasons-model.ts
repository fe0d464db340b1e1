import type { Link, TableModel } from "./basic-model";
import type { CardChoice } from "./filming-model";

/** The seasons of a drill's students, each moved so that its first day on the drill is the same one. */
export interface SeasonsChart {
  /** What it shows, in a sentence. */
  readonly sentence: string;
  /** Days from the first day on the drill; the chart reaches from one to the other. */
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly { readonly at: number; readonly label: string }[];
  /** Weeks from the first day. */
  readonly weeks: readonly { readonly at: number; readonly label: string }[];
  /** The band, where it is the same for all; null: it isn't, or there is none. */
  readonly band: { readonly low: number | null; readonly high: number | null } | null;
  /** A line for each student; a film behind the last day on the drill is no part of it. */
  readonly lines: readonly {
    readonly id: string;
    readonly dots: readonly { readonly at: number; readonly value: number }[];
  }[];
  readonly begins: string;
}

/** One drill: its students' seasons, aligned, and what of each. */
export interface DrillSeasonsPage {
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  /** Where everybody stands in what the drill is for, and where it is described anew. */
  readonly ways: readonly Link[];
  readonly clubs: CardChoice | null;
  /** Null: nobody is measured. */
  readonly seasons: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly chart: SeasonsChart;
    readonly table: TableModel;
  } | null;
  readonly care: { readonly margin: string; readonly lines: readonly string[] };
}
