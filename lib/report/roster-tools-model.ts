import type { Link } from "./basic-model";
import type { FieldModel } from "./form-model";

/** What finds, filters and orders the roster, as a form whose answer is an address. */
export interface RosterTools {
  readonly action: string;
  readonly search: FieldModel;
  readonly submit: string;
  readonly more: { readonly summary: string; readonly open: "yes" | "no"; readonly fields: readonly FieldModel[] };
  /** Sent along with the form. */
  readonly hidden: readonly { readonly name: string; readonly value: string }[];
  /** How many of how many, and in which order. */
  readonly state: string;
  /** What is filtered by, each a link to the roster without it; empty: nothing is. */
  readonly filters: readonly Link[];
  readonly filtersLabel: string;
  /** Everybody, in the order of need; null: so it is. */
  readonly all: Link | null;
  /** That the roster opened as the viewer keeps it; empty: it didn't. */
  readonly kept: string;
  /** Back to the kept view; null: there is none, or it is this one. */
  readonly back: Link | null;
  /** The button that keeps this view; null: it is kept, or there is nothing to keep. */
  readonly keep: { readonly label: string; readonly explains: string; readonly query: string } | null;
  /** The button that lets go of the kept view; null: there is none. */
  readonly forget: string | null;
  /** Shown in place of the table where nobody answers the filters; null: somebody does. */
  readonly none: { readonly heading: string; readonly text: string; readonly ways: readonly Link[] } | null;
}
