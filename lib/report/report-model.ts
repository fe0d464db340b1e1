import type { Fact, Glyph, Link, TableModel } from "./basic-model";
import type { SeasonChart } from "./chart-model";
import type { ContactPart, SeasonPage } from "./page-model";

/** One fundamental on paper: every field is one of its page. */
export interface ReportedFundamental {
  readonly id: string;
  readonly name: string;
  /** Place against the band, said first. */
  readonly position: string;
  readonly glyph: Glyph;
  readonly heading: string;
  readonly facts: readonly Fact[];
  /** What the roster's list, the pace and the alarm add; empty: nothing. */
  readonly texts: readonly string[];
  readonly chart: SeasonChart;
}

interface Texts {
  readonly margin: string;
  readonly heading: string;
  readonly texts: readonly string[];
}

/** The season of one student as a report for print. */
export interface ReportPage {
  readonly title: string;
  readonly lede: string;
  readonly counts: string;
  readonly back: Link;
  readonly print: string;
  readonly next: SeasonPage["next"];
  readonly proved: SeasonPage["proved"];
  /** Everything measured, a line each, and under it the time axis with drills, events and practice; null: nothing is. */
  readonly glance: {
    readonly margin: string;
    readonly heading: string;
    readonly table: TableModel;
    readonly axis: Pick<SeasonPage["evidence"], "drills" | "events" | "marked" | "practice"> & {
      readonly days: SeasonChart["x"];
    };
  } | null;
  readonly fundamentals: {
    readonly margin: string;
    readonly heading: string;
    readonly explains: string;
    readonly items: readonly ReportedFundamental[];
  };
  readonly keep: Texts;
  readonly contact: ContactPart | null;
  readonly events: {
    readonly margin: string;
    readonly heading: string;
    readonly tables: readonly TableModel[];
    readonly none: string;
  };
  readonly camera: Texts;
  readonly settle: SeasonPage["settle"];
  readonly method: Texts;
  readonly cautions: { readonly margin: string; readonly texts: readonly string[] };
}
