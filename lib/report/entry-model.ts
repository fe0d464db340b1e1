import type { FormModel } from "./form-model";
import type { Link } from "./page-model";

/** The demo's accounts, each opened by one press. */
export interface ReadyAccounts {
  readonly margin: string;
  readonly explains: string;
  readonly accounts: readonly {
    readonly name: string;
    readonly submit: string;
    readonly explains: string;
    readonly hidden: FormModel["hidden"];
  }[];
}

/** The page on which somebody logs in. */
export interface SignInPage {
  readonly product: string;
  readonly documentTitle: string;
  /** Null: the demo's ready accounts stand there instead. */
  readonly form: FormModel | null;
  /** Null: no demo. */
  readonly ready: ReadyAccounts | null;
  /** What is said above the form; empty: nothing. */
  readonly notice: string;
  /** Where an academy is begun; null: there is one. */
  readonly start: Link | null;
  /** The button that leads to the other academy; null: there is no other. */
  readonly other: FormModel | null;
}
