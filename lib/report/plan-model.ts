import type { Link, TableModel } from "./basic-model";
import type { CardFigure } from "./filming-model";

/** A button with what it sends. */
export interface PressModel {
  readonly label: string;
  readonly hidden: Readonly<Record<string, string>>;
}

/** A text to be copied as it stands. */
export interface CopyText {
  /** In which language the text is, where it may be another than the page’s. */
  readonly lang?: string;
  readonly label: string;
  readonly text: string;
  readonly copy: { readonly label: string; readonly done: string; readonly failed: string };
}

/** The sheet for whoever looks after the phone: the words of the message, and a card for each view. */
export interface PlanSheet {
  readonly margin: string;
  readonly explains: string;
  /** In which language the family reads it. */
  readonly lang: string;
  readonly heading: string;
  readonly lines: readonly string[];
  readonly cards: readonly {
    readonly heading: string;
    readonly plan: CardFigure;
    readonly steps: readonly string[];
    readonly checks: readonly string[];
  }[];
  readonly care: readonly string[];
}

/** The page of a student's next film; its form stands beside it. */
export interface PlanPage {
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  readonly notices: readonly string[];
  /** The same for other clubs; null: the student was filmed with none or one group of them. */
  readonly clubGroups: {
    readonly label: string;
    readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
  } | null;
  /** A promise that has passed: the button that says the family was reminded; null: nothing is awaited, or not yet. */
  readonly awaited: { readonly text: string; readonly remind: PressModel | null } | null;
  readonly read: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly items: readonly {
      readonly name: string;
      readonly href: string | null;
      readonly facts: string;
      readonly why: string;
      readonly tells: string;
    }[];
  };
  readonly film: {
    readonly margin: string;
    readonly heading: string;
    readonly lines: readonly string[];
    readonly links: readonly Link[];
  } | null;
  readonly left: { readonly margin: string; readonly heading: string; readonly lines: readonly string[] } | null;
  /** Pain, and a young body's load. */
  readonly cautions: { readonly margin: string; readonly heading: string; readonly lines: readonly string[] };
  readonly send: {
    readonly margin: string;
    readonly explains: string;
    readonly note: string;
    readonly message: CopyText;
  } | null;
  readonly sheet: PlanSheet | null;
  readonly told: {
    readonly margin: string;
    readonly heading: string;
    readonly table: TableModel;
    readonly change: string;
    readonly presses: readonly PressModel[];
  } | null;
}
