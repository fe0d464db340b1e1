import type { Glyph, Link } from "./basic-model";
import type { Strip } from "./chart-model";

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
    /** The rows as a file; null: there is none. */
    readonly download: Link | null;
    readonly seen: { readonly label: string; readonly explains: string; readonly asOf: string } | null;
  };
  /** Owned fundamentals to look at again; null: none. */
  readonly watch: {
    readonly margin: string;
    readonly heading: string;
    readonly items: readonly { readonly student: Link; readonly fundamental: Link; readonly text: string }[];
  } | null;
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
