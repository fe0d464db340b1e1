import type { FieldModel } from "./form-model";
import type { KeepModel } from "./keep-model";
import type { Link } from "./page-model";

/** One cell of the week: its name, what was typed, what is wrong; the label names day and count. */
export interface PracticeCell {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly error: string;
}

/** A form that logs practice of up to a week, a row a day. */
export interface PracticeForm {
  readonly margin: string;
  readonly explains: string;
  readonly caption: string;
  readonly columns: readonly [string, string, string];
  readonly days: readonly { readonly label: string; readonly cells: readonly [PracticeCell, PracticeCell] }[];
  /** What holds of all days logged at once. */
  readonly fields: readonly FieldModel[];
  readonly submit: string;
  readonly refusal: string;
  readonly hidden: readonly { readonly name: string; readonly value: string }[];
  /** How it is kept while somebody types; absent: only when it is sent. */
  readonly keep?: KeepModel;
  /** The week before, and the week after; the latter is left out in this week. */
  readonly weeks: { readonly label: string; readonly links: readonly Link[] };
}
