import type { Link } from "./basic-model";

/** One thing that can be said of a coded phrase with one tap; its field travels with the form. */
export interface NoteChoice {
  readonly name: string;
  readonly value: string;
  readonly label: string;
  /** The same out of its place, where the label alone doesn't say it. */
  readonly spoken?: string;
}

/** One word of a note that names a strike or might, and what was read in it. */
export interface NoteRow {
  /** As it stands in the note. */
  readonly word: string;
  readonly said: string;
  readonly state: "counted" | "named" | "passed";
  /** At hand, and one step away. */
  readonly choices: readonly NoteChoice[];
  readonly more: readonly NoteChoice[];
  /** Other counts that may be meant; null: it counts nothing. */
  readonly counts: { readonly summary: string; readonly choices: readonly NoteChoice[] } | null;
}

/** What a note says of strikes, beside each of its sentences. */
export interface NoteAnswer {
  /** Whose note it is: an id of a student. */
  readonly whose: string;
  /** Names of the fields that it is read from. */
  readonly fields: Readonly<Record<"note" | "solid" | "balls", string>>;
  /** What was said of this note's counts; it travels with the form unseen until the form is saved. */
  readonly counted: { readonly name: string; readonly value: string };
  readonly heading: string;
  readonly sentences: readonly { readonly text: string; readonly rows: readonly NoteRow[] }[];
  /** What doesn't fit together and is asked. */
  readonly asks: readonly string[];
  /** Solid strikes and balls that the note gives and the fields don't hold; null: nothing to put in. */
  readonly offer: { readonly choice: NoteChoice; readonly solid: string; readonly balls: string } | null;
  readonly moreLabel: string;
  /** Where corrections are kept; null: none was made here. */
  readonly remembered: Link | null;
}

/** The page of one session's note. */
export interface SessionNotePage {
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly margin: string;
  readonly explains: string;
  readonly hidden: readonly { readonly name: string; readonly value: string }[];
  /** Null: the session has no note, and `none` says so. */
  readonly answer: NoteAnswer | null;
  readonly none: string;
}
