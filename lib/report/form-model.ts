import type { Link } from "./basic-model";
import type { CaptureAnswer } from "./capture-answer-model";
import type { GridModel } from "./grid-model";
import type { KeepModel } from "./keep-model";
import type { NoteAnswer } from "./note-answer-model";

/** One field of a form with its words, its value and what is wrong with it. */
export interface FieldModel {
  readonly name: string;
  readonly label: string;
  readonly hint: string;
  readonly kind:
    | "text"
    | "number"
    | "date"
    | "select"
    | "radio"
    | "checkbox"
    | "textarea"
    /** With which somebody logs in. */
    | "email"
    | "password"
    | "new-password"
    /** Of the second step. */
    | "code";
  /** Of boxes: the ticked ones, separated by commas. */
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly required: "yes" | "no";
  /** What is wrong and what to do; empty: nothing. */
  readonly error: string;
}

/** A form: its parts, its button, and what it says after a refusal. */
export interface FormModel {
  readonly heading: string;
  readonly explains: string;
  readonly parts: readonly {
    readonly margin: string;
    readonly explains: string;
    readonly fields: readonly FieldModel[];
    /** The button that makes the form anew from what these fields say; absent: nothing follows from them. */
    readonly refresh?: string;
    /** Fields that are one step away. */
    readonly more?: { readonly summary: string; readonly fields: readonly FieldModel[]; readonly open: "yes" | "no" };
    /** What a film can show, as the form stands; null or absent: no film. */
    readonly answer?: CaptureAnswer | null;
    /** Readings of this part alone, above its fields; absent: none. */
    readonly grid?: GridModel;
    /** What the note among the fields says of strikes, as the form stands; absent: no note. */
    readonly note?: NoteAnswer;
  }[];
  readonly grid: GridModel | null;
  readonly submit: string;
  /** The button that asks what the films can show, for pages without scripts; absent: nothing to ask. */
  readonly check?: string;
  /** The same for what the note says. */
  readonly noteCheck?: string;
  /** Says that nothing was saved and why; empty at first sight. */
  readonly refusal: string;
  /** Fields that travel unseen. */
  readonly hidden: readonly { readonly name: string; readonly value: string }[];
  /** How it is kept while somebody types; absent: only when it is sent. */
  readonly keep?: KeepModel;
}

/** One question of an import: one answer settles every row of its kind. */
export interface ImportQuestionModel {
  readonly id: string;
  readonly number: number;
  readonly heading: string;
  readonly rows: string;
  readonly why: string;
  readonly name: string;
  readonly value: string;
  readonly options: readonly {
    readonly value: string;
    readonly label: string;
    readonly text: { readonly name: string; readonly label: string; readonly value: string } | null;
  }[];
}

/** A choice of what a column is, or of its unit. */
export interface ImportChoice {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly groups: readonly {
    readonly label: string;
    readonly options: readonly { readonly value: string; readonly label: string }[];
  }[];
}

/** What each column is taken for, to be changed. */
export interface ImportMapping {
  readonly margin: string;
  readonly heading: string;
  readonly explains: string;
  readonly columns: readonly {
    readonly place: number;
    readonly heading: string;
    readonly sample: string;
    readonly meaning: ImportChoice;
    readonly unit: ImportChoice | null;
  }[];
  readonly more: string;
  readonly submit: string;
}

/** How far the reading of a file is. */
export interface ImportProgress {
  readonly margin: string;
  readonly draftId: string;
  readonly state: "running" | "stopped";
  readonly text: string;
  readonly read: number;
  /** 0: not known yet. */
  readonly of: number;
  readonly again: Link;
  /** Where the figures come from while the page is open. */
  readonly from: string;
  readonly stop: string;
  readonly readAgain: string;
  readonly drop: string;
}

/** The import page: upload, or the preview of an uploaded file. */
export interface ImportPage {
  readonly title: string;
  readonly lede: string;
  readonly upload: {
    readonly action: string;
    readonly fileLabel: string;
    readonly hint: string;
    readonly submit: string;
    readonly error: string;
    /** A table that is pasted in place of a file. */
    readonly paste: { readonly label: string; readonly hint: string; readonly submit: string };
    readonly samples: { readonly heading: string; readonly links: readonly Link[] };
    readonly format: { readonly heading: string; readonly lines: readonly string[] };
  } | null;
  readonly preview: {
    readonly columns: {
      readonly margin: string;
      readonly explains: string;
      readonly heading: string;
      readonly rowLabel: string;
      readonly head: readonly { readonly theirs: string; readonly ours: string; readonly unit: string }[];
      readonly rows: readonly {
        readonly number: number;
        readonly cells: readonly { readonly text: string; readonly mark: number | null }[];
      }[];
      readonly gap: string;
    };
    /** How a file with the same heads was read before; null: none was, or it was forgotten. */
    readonly source: {
      readonly margin: string;
      readonly text: string;
      readonly forget: string;
      readonly fingerprint: string;
    } | null;
    readonly mapping: ImportMapping | null;
    readonly questions: {
      readonly margin: string;
      readonly explains: string;
      readonly heading: string;
      readonly columns: readonly [string, string, string];
      readonly items: readonly ImportQuestionModel[];
      readonly submit: string;
    } | null;
    readonly issues: {
      readonly margin: string;
      readonly heading: string;
      readonly items: readonly string[];
      readonly more: string;
    } | null;
    readonly notes: {
      readonly margin: string;
      readonly heading: string;
      readonly items: readonly string[];
      readonly more: string;
    } | null;
    readonly saved: {
      readonly margin: string;
      readonly heading: string;
      readonly lines: readonly string[];
      /** How many rows are ready, wait or are left out. */
      readonly fates: string;
      readonly submit: string | null;
      readonly drop: string;
      readonly rejected: Link | null;
      readonly all: Link | null;
    };
    readonly draftId: string;
  } | null;
  /** While the file is being read, or after that was stopped. */
  readonly progress: ImportProgress | null;
  /** After confirming: what was written. */
  readonly done: {
    readonly heading: string;
    readonly lines: readonly string[];
    readonly links: readonly Link[];
  } | null;
}

/** A page of plain words: about the demo, a refusal, help. */
export interface TextPage {
  readonly title: string;
  readonly lede: string;
  readonly parts: readonly {
    readonly margin: string;
    readonly heading: string;
    readonly paragraphs: readonly string[];
    readonly links: readonly Link[];
  }[];
}
