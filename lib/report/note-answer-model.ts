import type { Link } from "./basic-model";

/** One thing that can be said of a coded phrase with one tap; its field travels with the form. */
export interface NoteChoice {
  readonly name: "recode" | "fill";
  readonly value: string;
  readonly label: string;
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
}

/** What a note says of strikes, beside each of its sentences. */
export interface NoteAnswer {
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
