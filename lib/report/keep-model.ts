import type { Link } from "./basic-model";

/** One field that two windows fill differently, each value as a person reads it. */
export interface BothField {
  readonly name: string;
  readonly label: string;
  readonly here: string;
  readonly there: string;
  /** As the other window's form holds it; several ticked boxes are several. */
  readonly thereValues: readonly string[];
}

/** What two windows hold of one form, to be chosen from. */
export interface BothModel {
  /** What happened; said at once. */
  readonly said: string;
  /** The window whose content waits apart. */
  readonly settles: string;
  readonly here: string;
  readonly there: string;
  readonly fields: readonly BothField[];
}

/** An unfinished form that was kept. */
export interface UnfinishedModel {
  readonly id: string;
  /** “Session of Ari, 24 Nov, 14 values, kept 14:05”. */
  readonly label: string;
  readonly goOn: Link;
  /** Asks before it drops; a dropped one can be taken back. */
  readonly drop: { readonly ask: string; readonly explains: string; readonly submit: string };
}

/** All that lies unfinished, and what was dropped lately. */
export interface UnfinishedPartModel {
  readonly margin: string;
  readonly heading: string;
  readonly items: readonly UnfinishedModel[];
  readonly dropped: readonly UnfinishedModel[];
  readonly droppedHeading: string;
  readonly takeBack: string;
  /** Where dropping and taking back leads to. */
  readonly back: string;
}

/** How a form is kept while somebody types. */
export interface KeepModel {
  readonly form: string;
  readonly studentId: string;
  /** The session, draw or other thing that it is for; empty: none. */
  readonly of: string;
  readonly draft: string;
  readonly version: number;
  /** This window. */
  readonly writer: string;
  /** Names of the fields by which the form is led, not filled. */
  readonly leading: readonly string[];
  /** How it stands when the page is opened. */
  readonly said: string;
  /** `no`: the disk took nothing of what the page shows, so that it is to be kept at once. */
  readonly isOnDisk: "yes" | "no";
  /** Names that the browser may keep; one ending in `.` stands for all that begin so. */
  readonly browserKeeps: readonly string[];
  readonly both: BothModel | null;
  /** Other unfinished forms of this kind; empty once this one holds anything. */
  readonly unfinished: readonly UnfinishedModel[];
  /** The one just dropped. */
  readonly dropped: UnfinishedModel | null;
  readonly words: KeepWords;
}

/** The words of the browser's part; `{at}` is filled in there. */
export interface KeepWords {
  readonly noScript: string;
  readonly unsent: string;
  readonly unsentNothing: string;
  readonly notSaved: string;
  readonly found: string;
  readonly take: string;
  readonly drop: string;
  readonly changed: string;
  readonly seeBoth: string;
  readonly here: string;
  readonly there: string;
  readonly empty: string;
  readonly field: string;
  readonly choose: string;
  readonly allHere: string;
  readonly allThere: string;
  readonly use: string;
  readonly chooseFirst: string;
  readonly unfinished: string;
  readonly dropped: string;
  readonly takeBack: string;
  readonly signIn: string;
  /** What the address of the form is without an id: another, empty one. */
  readonly page: string;
}
