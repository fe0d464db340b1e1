import type { Fact, Link, TableModel } from "./basic-model";

/** A button that does one thing. */
export interface Press {
  readonly label: string;
  readonly explains: string;
  readonly hidden: readonly { readonly name: string; readonly value: string }[];
}

/** One part of a page about what is on file. */
export interface RecordPart {
  readonly margin: string;
  readonly explains: string;
  readonly heading: string;
  readonly paragraphs: readonly string[];
  readonly facts: readonly Fact[];
  readonly tables: readonly TableModel[];
  readonly links: readonly Link[];
  readonly presses: readonly Press[];
}

/** A page about what is on file: a session, a history, what was known on a day. */
export interface RecordPage {
  readonly title: string;
  readonly documentTitle: string;
  readonly lede: string;
  readonly back: Link;
  /** Said at the head; empty: nothing. */
  readonly notices: readonly string[];
  /** A day to choose, which leads to the same page of that day; null: nothing to choose. */
  readonly ask: {
    readonly action: string;
    readonly name: string;
    readonly label: string;
    readonly value: string;
    readonly latest: string;
    readonly submit: string;
    readonly hidden: readonly { readonly name: string; readonly value: string }[];
  } | null;
  readonly parts: readonly RecordPart[];
}

/** A part with nothing in it but its head, to be filled. */
export function emptyPart(margin: string, heading: string): RecordPart {
  return { margin, explains: "", heading, paragraphs: [], facts: [], tables: [], links: [], presses: [] };
}
