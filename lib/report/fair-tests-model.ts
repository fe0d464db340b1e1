import type { Fact, Link } from "./basic-model";
import type { PressModel } from "./plan-model";

/** One test by the lot: first in words, then how far it has come, then its looks. */
export interface FairTestPart {
  readonly id: string;
  readonly margin: string;
  readonly explains: string;
  readonly heading: string;
  readonly said: string;
  readonly facts: readonly Fact[];
  /** A sentence for each look, and for an early end. */
  readonly looks: readonly string[];
  readonly presses: readonly PressModel[];
}

/** The tests of an academy, those that run first; the form that plans one stands beside it. */
export interface FairTestsPage {
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly notices: readonly string[];
  readonly tests: readonly FairTestPart[];
  readonly method: { readonly margin: string; readonly heading: string; readonly lines: readonly string[] };
}

/** The lot on the page that gives a drill: a test in which the student may draw, or what was drawn. */
export interface LotPart {
  readonly margin: string;
  readonly heading: string;
  readonly lines: readonly string[];
  /** Null: it is drawn. */
  readonly press: PressModel | null;
}
