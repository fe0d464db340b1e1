import type { Fact, Link, TableModel } from "./page-model";

/** What is pressed, with what goes along. */
interface PressButton {
  readonly label: string;
  readonly hidden: Readonly<Record<string, string>>;
}

/** One part of a page of records: what it says, and a table with ways on in its last column. */
export interface HappenPart {
  readonly margin: string;
  readonly explains: string;
  readonly heading: string;
  readonly paragraphs: readonly string[];
  readonly facts: readonly Fact[];
  readonly table: TableModel | null;
  /** One link a row of the table; null: none. */
  readonly open: { readonly label: string; readonly links: readonly Link[] } | null;
  /** A button in a row of the table in place of a link, null where the row has none; null or absent: no row has. */
  readonly press?: {
    readonly label: string;
    readonly buttons: readonly (PressButton | null)[];
  } | null;
}

/** A page about what happened to a student or what was practised: parts of plain words, and forms beneath. */
export interface HappenPage {
  readonly title: string;
  readonly documentTitle: string;
  readonly lede: string;
  readonly back: Link;
  readonly actions: readonly Link[];
  readonly parts: readonly HappenPart[];
  readonly cautions: readonly string[];
}
