import type { Fact, Link, TableModel } from "./basic-model";
import type { FormModel } from "./form-model";

/** A form within a part of a page; `act` names what it is sent to. */
export interface PartForm {
  readonly act: string;
  readonly form: FormModel;
}

/** What is shown once and to be kept elsewhere: a link, a secret, codes. */
export interface ShownOnce {
  readonly lines: readonly string[];
  /** Squares of a picture that a phone reads, as one SVG path in a square of `size`. */
  readonly picture: { readonly path: string; readonly size: number; readonly label: string } | null;
}

/** One part of a page about accounts and people. */
export interface PeoplePart {
  readonly margin: string;
  /** Empty: none. */
  readonly heading: string;
  readonly paragraphs: readonly string[];
  readonly facts: readonly Fact[];
  readonly table: TableModel | null;
  readonly links: readonly Link[];
  readonly once: ShownOnce | null;
  readonly forms: readonly PartForm[];
}

/** A page about accounts and people. */
export interface PeoplePage {
  readonly title: string;
  readonly documentTitle: string;
  readonly lede: string;
  readonly back: Link | null;
  /** What was just done; empty: nothing. */
  readonly notice: string;
  readonly parts: readonly PeoplePart[];
}
