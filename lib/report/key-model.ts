import type { KeepModel } from "./keep-model";
import type { Link, TableModel } from "./page-model";

/** Keys by which other programs may import. */
export interface KeysPage {
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  /** A key that was just made; null: none, or it was shown already. */
  readonly shown: {
    readonly heading: string;
    readonly text: string;
    readonly label: string;
    readonly key: string;
    readonly done: Link;
  } | null;
  readonly margin: string;
  readonly empty: string;
  /** Null: there is none. */
  readonly table: TableModel | null;
  readonly revokeLabel: string;
  /** One a row; null: revoked already. */
  readonly revokes: readonly ({ readonly id: string; readonly says: string } | null)[];
  readonly make: {
    readonly margin: string;
    readonly heading: string;
    readonly label: string;
    readonly hint: string;
    readonly submit: string;
    /** Empty: nothing is wrong. */
    /** What was typed. */
    readonly value: string;
    readonly error: string;
    readonly hidden: readonly { readonly name: string; readonly value: string }[];
    readonly keep: KeepModel;
  };
}
