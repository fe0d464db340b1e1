import type { Glyph, Link } from "./basic-model";
import type { Brief } from "./brief-model";
import type { Strip } from "./chart-model";
import type { RosterTools } from "./roster-tools-model";

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
  /** What stops the work, who chose it, or what is measured first; absent or empty: nothing. */
  readonly workNote?: string;
  /** One entry a column; null: not measured. */
  readonly cells: readonly (RosterCell | null)[];
  /** How many fundamentals lie outside, on the edge of and inside their bands; of whoever wasn't filmed, that. */
  readonly places: string;
  readonly contact: string;
  readonly lastSession: string;
  /** Away for more than six weeks: said here; empty otherwise. */
  readonly away: string;
}

/** Students of whom something is to be known or done, a line each. */
export interface NotedStudents {
  readonly margin: string;
  /** Empty: the margin says it. */
  readonly heading: string;
  readonly items: readonly { readonly student: Link; readonly text: string }[];
  /** How many more there are; empty: none. */
  readonly more: string;
}

/** The head of a column that the rows can be put in order by. */
export interface RosterHead extends Link {
  /** Which way the current order runs down the column, `other`: by more than the column shows; null: it is another's. */
  readonly sorted: "ascending" | "descending" | "other" | null;
  /** What a press does. */
  readonly explains: string;
}

/** The roster page. */
export interface RosterPage {
  readonly title: string;
  readonly lede: string;
  /** What was just done; absent or empty: nothing. */
  readonly notice?: string;
  /** Students who came from another coach and weren't looked at yet; null or absent: none. */
  readonly inherited?: NotedStudents | null;
  /** Drills whose day to be measured again has come; null or absent: none. */
  readonly drillsDue?: NotedStudents | null;
  /** The link that shows or hides whoever has left; null: nobody has. */
  readonly departed: Link | null;
  /** Whose consent is missing, has ended or ends soon; null: nobody's. */
  readonly consents: NotedStudents | null;
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
  /** The one next thing and what else of everybody is to be told first; absent: nobody is there yet. */
  readonly brief?: Brief;
  /** Families whose link ends soon, or who wait for an answer; null: none. */
  readonly families: NotedStudents | null;
  readonly evidence: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly key: readonly { readonly glyph: Glyph; readonly label: string }[];
    readonly groups: readonly { readonly label: string; readonly span: number }[];
    readonly columns: readonly { readonly id: string; readonly name: string; readonly band: string }[];
    /** The columns that have an order. */
    readonly heads: { readonly student: RosterHead; readonly inHand: RosterHead; readonly last: RosterHead };
    readonly contactLabel: string;
    readonly notMeasured: string;
    readonly rows: readonly RosterRow[];
    readonly download: Link;
    readonly sort: { readonly label: string; readonly links: readonly (Link & { readonly current: "yes" | "no" })[] };
    readonly pages: {
      readonly label: string;
      readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
      /** Which of how many this page shows. */
      readonly state: string;
      readonly before: Link | null;
      readonly next: Link | null;
    } | null;
    readonly tools: RosterTools;
    /** Past everything else to the students. */
    readonly skip: Link;
  };
  readonly settle: {
    readonly margin: string;
    readonly heading: string;
    readonly items: readonly { readonly student: string; readonly text: string; readonly href: string }[];
    /** How many more there are; empty or absent: none. */
    readonly more?: string;
  } | null;
  /** Shown in place of all else in an empty academy: the steps of a start. */
  readonly start: { readonly heading: string; readonly steps: readonly (Link & { readonly text: string })[] } | null;
}
