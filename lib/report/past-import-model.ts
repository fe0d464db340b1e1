import type { Link, TableModel } from "./page-model";

/** Lines under a heading, the first of many; `more` says how many were left off, empty: none. */
export interface PastLines {
  readonly margin: string;
  readonly heading: string;
  readonly items: readonly string[];
  readonly more: string;
}

/** Everything that was imported, latest first. */
export interface PastImportsPage {
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly margin: string;
  /** Null: nothing was imported yet. */
  readonly table: TableModel | null;
  readonly linkLabel: string;
  /** One a row. */
  readonly links: readonly Link[];
  readonly empty: string;
}

/** How an import is taken back, or why it can't be. */
export interface UndoModel {
  readonly margin: string;
  readonly heading: string;
  readonly paragraphs: readonly string[];
  /** What was built on it, with where it is. */
  readonly built: readonly { readonly text: string; readonly link: Link | null }[];
  /** What to do where it can't; empty: it can. */
  readonly instead: string;
  readonly links: readonly Link[];
  /** Null: it can't be taken back, or is taken back already. */
  readonly form: {
    readonly batchId: string;
    readonly sure: string;
    readonly submit: string;
    /** Why it wasn't taken back; empty: nobody tried. */
    readonly error: string;
  } | null;
}

/** One import: what it brought, what was changed on the way, and its undo. */
export interface PastImportPage {
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly students: {
    readonly margin: string;
    readonly heading: string;
    readonly table: TableModel;
    readonly linkLabel: string;
    readonly links: readonly Link[];
  } | null;
  readonly lines: readonly PastLines[];
  readonly undo: UndoModel;
}

/** An import, or the undo of one, that is on its way. */
export interface RunningImport {
  readonly title: string;
  readonly margin: string;
  /** Where it is; said anew as it goes on. */
  readonly says: string;
  readonly explains: string;
  /** What a page without scripts follows to see how far it is. */
  readonly again: Link;
  /** Where the same is told as data. */
  readonly poll: string;
  /** Null: too late to stop it, or already over. */
  readonly stop: { readonly draftId: string; readonly label: string } | null;
  readonly ended: "yes" | "no";
}
