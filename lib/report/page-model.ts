import type { SeasonChart, Strip } from "./chart-model";

/** What a mark shows; the word beside it says the same. `moved` is a proved move that is neither better nor worse. */
export type Glyph = "gain" | "slip" | "steady" | "open" | "moved";

/** A link with its words. */
export interface Link {
  readonly href: string;
  readonly label: string;
}

/** One fact: its name and its value, both finished. */
export interface Fact {
  readonly name: string;
  readonly value: string;
  /** A quiet second line; empty: none. */
  readonly note: string;
}

/** A table with finished cells. */
export interface TableModel {
  readonly caption: string;
  readonly columns: readonly { readonly label: string; readonly align: "start" | "end" }[];
  /** `quiet` rows are set aside. */
  readonly rows: readonly { readonly cells: readonly string[]; readonly tone: "plain" | "quiet" }[];
}

/** What stands around every page. */
export interface FrameModel {
  readonly product: string;
  readonly academyName: string;
  readonly viewer: string;
  readonly asOf: string;
  /** Said on every page of the demo; null elsewhere. */
  readonly demo: {
    readonly line: string;
    /** A sentence of its own behind the line; empty: none. */
    readonly about: string;
    readonly start: Link;
  } | null;
  readonly navigation: readonly (Link & { readonly id: string })[];
  readonly skip: string;
  readonly chartWords: ChartWords;
}

/** The few words that a chart's own controls need. */
export interface ChartWords {
  readonly goalBand: string;
  readonly table: string;
  readonly liveChart: string;
}

/** One proved change in the brief on top of the roster. */
export interface ProvedRow {
  readonly glyph: Glyph;
  readonly word: string;
  readonly student: string;
  readonly fundamental: string;
  readonly href: string;
  readonly levels: string;
  readonly size: string;
  readonly tone: "toward" | "away" | "plain";
  readonly days: string;
  readonly sure: string;
  readonly position: string;
  readonly strip: Strip;
}

/** One measured fundamental in a roster row. */
export interface RosterCell {
  readonly fundamentalId: string;
  readonly href: string;
  readonly strip: Strip;
  /** Inside, outside or on the edge, and ± : said first. */
  readonly position: string;
  readonly glyph: Glyph;
  readonly word: string;
}

/** One student's row. */
export interface RosterRow {
  readonly studentId: string;
  readonly href: string;
  readonly alias: string;
  readonly detail: string;
  /** The fundamental in hand: where it is, then whether it has changed. */
  readonly inHand: {
    readonly name: string;
    readonly position: string;
    readonly glyph: Glyph;
    readonly word: string;
    /** Which of the row's cells it is; absent: found by its name among the columns. */
    readonly fundamentalId?: string;
  } | null;
  /** One entry a column; null: not measured. */
  readonly cells: readonly (RosterCell | null)[];
  readonly contact: string;
  readonly lastSession: string;
  /** Away for more than six weeks: said here; empty otherwise. */
  readonly away: string;
}

/** The roster page. */
export interface RosterPage {
  readonly title: string;
  readonly lede: string;
  readonly proved: {
    readonly margin: string;
    readonly since: string;
    readonly heading: string;
    readonly columns: readonly string[];
    readonly rows: readonly ProvedRow[];
    /** Told when nothing is new. */
    readonly empty: string;
    readonly seen: { readonly label: string; readonly explains: string; readonly asOf: string } | null;
  };
  readonly next: {
    readonly margin: string;
    readonly heading: string;
    readonly text: string;
    readonly link: Link;
  } | null;
  readonly evidence: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly key: readonly { readonly glyph: Glyph; readonly label: string }[];
    readonly groups: readonly { readonly label: string; readonly span: number }[];
    readonly columns: readonly { readonly id: string; readonly name: string; readonly band: string }[];
    readonly studentLabel: string;
    readonly inHandLabel: string;
    readonly contactLabel: string;
    readonly lastLabel: string;
    readonly notMeasured: string;
    readonly rows: readonly RosterRow[];
    readonly download: Link;
    readonly sort: { readonly label: string; readonly links: readonly (Link & { readonly current: "yes" | "no" })[] };
    readonly pages: {
      readonly label: string;
      readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
    } | null;
  };
  readonly settle: {
    readonly margin: string;
    readonly heading: string;
    readonly items: readonly { readonly student: string; readonly text: string; readonly href: string }[];
  } | null;
  /** Shown in place of all else in an empty academy: the steps of a start. */
  readonly start: { readonly heading: string; readonly steps: readonly (Link & { readonly text: string })[] } | null;
}

/** One fundamental in a student's season. */
export interface SeasonRow {
  readonly fundamentalId: string;
  readonly href: string;
  readonly name: string;
  readonly place: "in-hand" | "keep" | "waits";
  readonly glyph: Glyph;
  readonly word: string;
  readonly text: string;
  readonly chart: SeasonChart;
  readonly facts: readonly Fact[];
}

/** A student's season. */
export interface SeasonPage {
  readonly title: string;
  readonly documentTitle: string;
  readonly lede: string;
  readonly back: Link;
  readonly proved: {
    readonly margin: string;
    readonly heading: string;
    readonly items: readonly {
      readonly glyph: Glyph;
      readonly heading: string;
      readonly text: string;
      readonly href: string;
    }[];
    readonly empty: string;
  };
  readonly next: {
    readonly margin: string;
    readonly heading: string;
    readonly text: string;
    readonly alters: string;
  } | null;
  readonly evidence: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly groups: readonly { readonly label: string; readonly rows: readonly SeasonRow[] }[];
  };
  readonly clubGroups: {
    readonly label: string;
    readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
  } | null;
  readonly drills: TableModel | null;
  readonly settle: { readonly margin: string; readonly heading: string; readonly table: TableModel } | null;
  readonly sessions: { readonly margin: string; readonly heading: string; readonly table: TableModel };
  readonly actions: readonly Link[];
  readonly cautions: readonly string[];
  /** Sessions that wait or can't be judged, said in sentences; empty: none. */
  readonly notices: readonly string[];
}

/** One fundamental of a student. */
export interface FundamentalPage {
  readonly title: string;
  readonly documentTitle: string;
  readonly lede: string;
  readonly back: Link;
  readonly verdict: {
    readonly margin: string;
    readonly glyph: Glyph;
    readonly word: string;
    /** The verdict in a sentence. */
    readonly heading: string;
    /** Place against the band, said first. */
    readonly position: string;
    readonly facts: readonly Fact[];
    /** What the roster's list adds; empty: nothing. */
    readonly listing: string;
    readonly detail: readonly string[];
    readonly detailLabel: string;
  };
  readonly evidence: {
    readonly margin: string;
    readonly explains: string;
    readonly chart: SeasonChart;
    readonly table: TableModel;
    readonly links: readonly Link[];
  };
  readonly beforeAfter: {
    readonly margin: string;
    readonly heading: string;
    readonly table: TableModel;
    /** Each row's level as an interval against the band, drawn in one more column; absent: none. */
    readonly intervals?: {
      readonly label: string;
      readonly from: number;
      readonly to: number;
      readonly bandLow: number | null;
      readonly bandHigh: number | null;
      readonly rows: readonly {
        readonly low: number;
        readonly value: number;
        readonly high: number;
        readonly sentence: string;
      }[];
    };
  } | null;
  readonly doubt: {
    readonly margin: string;
    readonly heading: string;
    readonly parts: readonly {
      readonly name: string;
      readonly share: number;
      readonly shareLabel: string;
      readonly sizeLabel: string;
      readonly pattern: "solid" | "mid" | "hatch" | "light";
    }[];
  } | null;
  readonly settle: { readonly margin: string; readonly heading: string; readonly text: string } | null;
  readonly readings: { readonly margin: string; readonly heading: string; readonly table: TableModel };
  readonly clubGroups: {
    readonly label: string;
    readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
  } | null;
  readonly cautions: readonly string[];
  readonly notices: readonly string[];
}
