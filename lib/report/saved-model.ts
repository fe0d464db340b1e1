import type { Glyph, Link } from "./basic-model";

/** What one session changed in what is said of one fundamental, in one line. */
export interface SavedLine {
  readonly href: string;
  readonly name: string;
  readonly glyph: Glyph;
  readonly text: string;
}

/** The page after a session was saved. */
export interface SavedPage {
  readonly title: string;
  readonly documentTitle: string;
  readonly lede: string;
  readonly back: Link;
  readonly changed: {
    readonly margin: string;
    readonly heading: string;
    /** The most important first. */
    readonly lines: readonly SavedLine[];
    /** All that says what it said before, in one line; empty: nothing does. */
    readonly unchanged: string;
  };
  /** Values far from all that was read before; null: none. */
  readonly check: {
    readonly margin: string;
    readonly heading: string;
    readonly items: readonly string[];
    readonly explains: string;
    readonly link: Link;
  } | null;
  readonly next: { readonly margin: string; readonly heading: string; readonly links: readonly Link[] };
}
