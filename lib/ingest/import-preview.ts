import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { ConsentStanding } from "@/lib/domain/consent";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import type { ImportPlan } from "@/lib/domain/session-entry";
import type { FileUnit } from "./parse-unit";
import type { ReadWorkbook } from "./read-workbook";

/**
 * Arguments of a message. Numbers stay numbers so that the message can choose its plural. An argument named
 * `fundamental` holds a fundamental's id, one named `group` a club group's: whoever says the sentence puts the name there.
 */
export type MessageArgs = Readonly<Record<string, string | number>>;

/** A student whom the academy already has. */
export interface KnownStudent {
  readonly id: string;
  readonly alias: string;
  readonly hand: Hand;
  readonly birthYear: number | null;
  /** Where the consent to measure stands today. */
  readonly consent: ConsentStanding["kind"];
  /** Who has the student in charge; absent or empty: nobody, or nobody asked. */
  readonly coach?: string;
}

/** The answer to one question: the option chosen, and what was typed beside it. */
export interface ImportAnswer {
  readonly option: string;
  readonly fields: ReadonlyMap<string, string>;
}

/** Answers by question id. Answers to questions that this file doesn't raise are ignored. */
export type ImportAnswers = ReadonlyMap<string, ImportAnswer>;

export interface ImportInput {
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly contentHash: string;
  /** The day where the students are, `YYYY-MM-DD`; later days are refused. */
  readonly today: string;
  readonly students: readonly KnownStudent[];
  /** Built-in and own. */
  readonly fundamentals: readonly Fundamental[];
  /** The academy's club groups. */
  readonly grouping: ClubGrouping;
  readonly answers: ImportAnswers;
  readonly defaults: { readonly reader: string };
  /** The opened workbook when the file is one; absent: it is none, or nobody could open it. */
  readonly workbook?: ReadWorkbook | null;
  /** What was said of the last file with these heads; absent or null: nothing. */
  sourceOf?(heads: readonly string[]): RememberedSource | null;
  /** Told now and then how many rows of how many are read. */
  onProgress?(read: number, of: number): void;
}

/** How a file with the same heads was read before. */
export interface RememberedSource {
  /** Answers that belong to the source and not to one file; see `sourceAnswers`. */
  readonly answers: ImportAnswers;
  readonly fileName: string;
  /** `YYYY-MM-DD`. */
  readonly day: string;
}

/** What a column of the file is taken for. `fundamental`: in wide form, see `fundamentalId`. */
export interface ImportColumn {
  /** The header as the file has it; blank where the file has none. */
  readonly header: string;
  /** 1-based place in the file. */
  readonly place: number;
  /** Message `import.field.<field>`; null: left out, for the reason `why` (message `import.left-out.<why>`). */
  readonly field: string | null;
  readonly fundamentalId: string | null;
  /** Unit of its values, message `import.unit.<unit>`; null where the column holds no measure. */
  readonly unit: string | null;
  readonly why: "unknown" | "blank" | "doubled" | "other-form" | "derived" | "chosen" | null;
  /** A field or fundamental id that the header nearly is. */
  readonly suggestion: string | null;
  /** First filled cell. */
  readonly sample: string;
  /** What it may be taken for: the choice in force, as `columnChoice` writes it. */
  readonly choice: string;
  /** The unit that somebody chose for it; null: as the head or the fundamental has it. */
  readonly unitChosen: FileUnit | null;
  /** Units that its values may be in, the fundamental's own first; empty: no choice. */
  readonly units: readonly FileUnit[];
}

/** Something that keeps a file, row or cell out. Message `import.issue.<code>`, with `row`, `column`, `value` among its arguments. */
export interface ImportIssue {
  readonly code: string;
  readonly args: MessageArgs;
  /** First row of this kind, 1-based as in the file; null: the file as a whole. */
  readonly row: number | null;
  /** Every row of this kind, ascending. */
  readonly rows: readonly number[];
  readonly column: string | null;
  /** The value as shown: cut to 80 characters, hidden marks made visible. */
  readonly value: string | null;
  /** Message `import.mend.<mend>`, same arguments; null where the issue's own sentence says what to do. */
  readonly mend: string | null;
}

/** Something to be typed beside an option. */
export interface ImportOptionField {
  /** Form name: `answer-<name>:<question id>`. */
  readonly name: string;
  readonly kind: "text" | "number";
  /** Message `import.ask.<code>`. */
  readonly code: string;
  readonly required: "required" | "optional";
}

export interface ImportOption {
  readonly id: string;
  /** Message `import.option.<code>`. */
  readonly code: string;
  readonly args: MessageArgs;
  readonly fields: readonly ImportOptionField[];
}

/** One answer settles every row of its kind. */
export interface ImportQuestion {
  /** Form name of the choice: `answer:<id>`, its value an option's id. */
  readonly id: string;
  /** Messages `import.question.<code>` (what is asked) and `import.why.<code>` (why). */
  readonly code: string;
  readonly args: MessageArgs;
  readonly rows: readonly number[];
  /** The one that fits best comes first; none is taken unasked but `standing`. */
  readonly options: readonly ImportOption[];
  /** The option chosen by the given answers, null where none (or an unusable one) was given. */
  readonly answer: string | null;
  /** What was typed beside the answer. */
  readonly answerFields: ReadonlyMap<string, string>;
  /** What holds while nobody answers; null: the rows wait. */
  readonly standing: string | null;
  /** Why a given answer can't be used yet, message `import.issue.<problem>`. */
  readonly problem: string | null;
}

/** A value that was changed, guessed or set aside. Message `import.note.<code>`, arguments `count`, `rows` and its own. */
export interface ImportNote {
  readonly code: string;
  readonly column: string | null;
  readonly args: MessageArgs;
  readonly rows: readonly number[];
}

/** What would be saved of one student. */
export interface ImportStudentSummary {
  readonly alias: string;
  readonly isNew: "new" | "known";
  readonly sessions: number;
  readonly swings: number;
  readonly readings: number;
  readonly firstDay: string;
  readonly lastDay: string;
}

/** A row of the file to show: the first rows, and those that an issue or question names. */
export interface ImportSheetRow {
  readonly row: number;
  /** One text a column, in the columns' order. */
  readonly cells: readonly string[];
  /** Places (1-based) of cells that an issue or question is about, with its index among the preview's. */
  readonly marks: readonly { readonly place: number; readonly kind: "issue" | "question"; readonly index: number }[];
}

export interface ImportPreview {
  readonly form: "long" | "wide" | null;
  /** What the file is. */
  readonly source: "text" | "workbook" | "json" | null;
  readonly encoding: string | null;
  readonly delimiter: "," | ";" | "\t" | "|" | null;
  readonly columns: readonly ImportColumn[];
  /** The heads as the file has them. */
  readonly heads: readonly string[];
  /** The file that was read before with the same heads, when what was said of it was taken. */
  readonly remembered: { readonly fileName: string; readonly day: string } | null;
  /** Rows under the header that hold anything. */
  readonly rowsTotal: number;
  /** Rows of which at least one reading will be saved. */
  readonly rowsReady: number;
  /** Rows of which nothing will be saved as things stand, ascending; each is named by an issue, question or note. */
  readonly restRows: readonly number[];
  /** Those of them that an answer may still free. */
  readonly waitingRows: readonly number[];
  /** Null: nothing to save. */
  readonly plan: ImportPlan | null;
  /** Consents to measure, confirmed on paper in the answers, of students whom the academy already has. */
  readonly consents: readonly { readonly studentId: string; readonly alias: string; readonly givenBy: string }[];
  readonly issues: readonly ImportIssue[];
  /** The one with most rows first. */
  readonly questions: readonly ImportQuestion[];
  readonly notes: readonly ImportNote[];
  readonly summaries: readonly ImportStudentSummary[];
  readonly sheet: readonly ImportSheetRow[];
}
