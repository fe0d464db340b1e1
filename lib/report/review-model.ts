import type { Glyph, Link, TableModel } from "./basic-model";
import type { SeasonChart } from "./chart-model";

interface Texts {
  readonly margin: string;
  readonly heading: string;
  readonly lines: readonly string[];
}

/** A fundamental that is talked about, with its chart. */
export interface ReviewRow {
  readonly id: string;
  readonly href: string;
  readonly name: string;
  readonly glyph: Glyph;
  readonly word: string;
  readonly lines: readonly string[];
  readonly chart: SeasonChart;
}

/** The season of one student for ten minutes of talk: at most two sheets of paper. */
export interface ReviewPage {
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  readonly season: string;
  readonly print: string;
  readonly back: Link;
  readonly clubGroups: {
    readonly label: string;
    readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
  } | null;
  readonly proved: {
    readonly margin: string;
    readonly heading: string;
    readonly items: readonly { readonly glyph: Glyph; readonly heading: string; readonly text: string }[];
    readonly empty: string;
  };
  readonly table: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly table: TableModel;
  } | null;
  readonly rows: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly items: readonly ReviewRow[];
    readonly more: string;
    readonly days: SeasonChart["x"];
  } | null;
  readonly practice: Texts;
  readonly contact: Texts;
  readonly next: Texts;
  readonly promise: Texts;
  /** What stops every drill: on paper too. */
  readonly pain: string;
  /** The others, on a screen alone. */
  readonly cautions: readonly string[];
}
