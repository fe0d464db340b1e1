import type { Link } from "./basic-model";
import type { FamilyPicture } from "./family-look-model";
import type { CopyText, PressModel } from "./plan-model";

/** A heading with sentences and ways on. */
export interface TellPart {
  readonly margin: string;
  readonly heading: string;
  readonly lines: readonly string[];
  readonly links: readonly Link[];
}

/** What was told, as it was sent. */
export interface ToldList {
  readonly margin: string;
  /** In which language the family reads. */
  readonly lang: string;
  readonly heading: string;
  readonly entries: readonly {
    readonly id: string;
    readonly heading: string;
    /** What became of it; empty: it stands. */
    readonly state: string;
    readonly text: string;
    readonly press: PressModel;
  }[];
}

/** The page on which a coach tells the family. */
export interface TellPage {
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly notices: readonly string[];
  /** Why nothing leaves the house; null: it may. */
  readonly refused: TellPart | null;
  /** In which language the family reads, and a button for each other one. */
  readonly language: TellPart & { readonly presses: readonly PressModel[] };
  readonly message: {
    readonly margin: string;
    readonly explains: string;
    readonly note: string;
    readonly message: CopyText;
    readonly keep: PressModel;
  } | null;
  readonly file: (TellPart & { readonly download: Link; readonly keep: PressModel }) | null;
  readonly letter: TellPart | null;
  readonly told: ToldList | null;
  readonly more: TellPart;
}

/** A letter as it is printed. */
export interface LetterSheet {
  /** In which language its sentences are. */
  readonly lang: string;
  readonly margin: string;
  readonly explains: string;
  readonly from: string;
  readonly day: string;
  readonly heading: string;
  readonly paragraphs: readonly string[];
  /** The coach's own paragraph, marked as such; null: none. */
  readonly own: {
    readonly heading: string;
    readonly lines: readonly string[];
    readonly place: "first" | "last";
  } | null;
  readonly foot: readonly string[];
}

/** The page of a season letter; its form stands beside it. */
export interface LetterPage {
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly notices: readonly string[];
  readonly refused: TellPart | null;
  readonly sheet: LetterSheet | null;
  readonly copy: { readonly margin: string; readonly explains: string; readonly message: CopyText } | null;
}

/** A file for the family: every word of it, in its order. */
export interface FamilyFile {
  readonly language: string;
  /** Nobody's name is in it. */
  readonly title: string;
  readonly heading: string;
  /** The season of what is in hand; null: nothing is on file of it. */
  readonly picture: FamilyPicture | null;
  readonly parts: readonly { readonly heading: string; readonly lines: readonly string[] }[];
  /** Behind one step; null: nothing is told in numbers. */
  readonly numbers: { readonly heading: string; readonly lines: readonly string[] } | null;
  readonly foot: readonly string[];
}
