import type { ChartFiles, Fact, Glyph, Link, TableModel } from "./basic-model";
import type { SeasonChart, Tick } from "./chart-model";

/** A share with its intervals on an axis from 0 to 100; every number in percent. */
export interface ShareStrip {
  readonly value: number;
  readonly low80: number;
  readonly high80: number;
  readonly low95: number;
  readonly high95: number;
  readonly ticks: readonly Tick[];
  /** The same in one sentence. */
  readonly sentence: string;
}

/** Solid strikes of a student in one club group. */
export interface ContactPart {
  readonly margin: string;
  readonly explains: string;
  /** The finding. */
  readonly heading: string;
  readonly texts: readonly string[];
  /** Null: no session enters the share. */
  readonly judged: {
    readonly glyph: Glyph;
    readonly word: string;
    readonly facts: readonly Fact[];
    readonly strip: ShareStrip;
    readonly chart: SeasonChart;
    /** The chart as files; null: on paper. */
    readonly files: ChartFiles | null;
  } | null;
  /** The counts by session, latest first; null: none. */
  readonly table: TableModel | null;
  readonly download: Link | null;
}
