import type { Link } from "./basic-model";

/** The lists of the brief, in the order in which a coach takes them. */
export const BRIEF_WORDS = ["pain", "watch", "ready", "begin", "blocked", "due", "stalled", "away"] as const;

/** One list of the brief. */
export type BriefWord = (typeof BRIEF_WORDS)[number];

/** Puts a line away until something about it changes, or brings it back. */
export interface PutAway {
  readonly key: string;
  readonly state: "stands" | "put-away";
  readonly label: string;
  /** The same with what it is about, for whoever hears it alone. */
  readonly name: string;
}

/** One line of a list: of whom, of what, and why. */
export interface BriefItem {
  readonly student: Link;
  readonly fundamental: Link | null;
  readonly text: string;
  readonly putAway: PutAway;
}

/** One list under the finding that it makes. */
export interface BriefList {
  readonly word: BriefWord;
  readonly heading: string;
  readonly explains: string;
  readonly items: readonly BriefItem[];
  /** How many more there are, and where they stand; null: none. */
  readonly more: Link | null;
  /** Puts all of it away; null: a single line has its own. */
  readonly all: { readonly word: BriefWord; readonly label: string } | null;
  /** How long a student may not have been filmed; null: nothing to choose. */
  readonly choice: {
    readonly label: string;
    readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
  } | null;
}

/** What of a roster a coach is told first, beside what is newly proved. */
export interface Brief {
  /** The one next thing; null: nothing is left. */
  readonly next: {
    readonly margin: string;
    readonly note: string;
    readonly heading: string;
    readonly text: string;
    /** What would put something else in its place. */
    readonly alters: string;
    readonly link: Link;
    readonly putAway: PutAway;
  } | null;
  /** That the hour is over; null: something is left. */
  readonly quiet: { readonly margin: string; readonly heading: string; readonly text: string } | null;
  /** What is known while nothing is proved yet; null: something is. */
  readonly known: {
    readonly margin: string;
    readonly heading: string;
    readonly text: string;
  } | null;
  readonly margin: string;
  /** After how many weeks without a film a student counts as not seen. */
  readonly weeks: number;
  readonly lists: readonly BriefList[];
  /** Shows or hides what was put away; null: nothing was. */
  readonly aside: Link | null;
}
