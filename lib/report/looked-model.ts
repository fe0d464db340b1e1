import type { Fact, Link, TableModel } from "./basic-model";

/** The page of who looked at a student's record. */
export interface LookedPage {
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  /** Everybody who looked. */
  readonly people: { readonly margin: string; readonly heading: string; readonly facts: readonly Fact[] };
  /** Day by day, latest first, some of them. */
  readonly days: {
    readonly margin: string;
    readonly heading: string;
    readonly explains: string;
    readonly table: TableModel | null;
    /** Said in the place of a table. */
    readonly none: string;
    /** The pages of the list; null: all is on this one. */
    readonly pages: {
      readonly label: string;
      readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
    } | null;
  };
  /** Words for the family, to be copied. */
  readonly message: {
    readonly margin: string;
    readonly heading: string;
    readonly label: string;
    readonly hint: string;
    readonly text: string;
  };
  readonly limits: { readonly margin: string; readonly heading: string; readonly paragraphs: readonly string[] };
  readonly links: { readonly label: string; readonly items: readonly Link[] };
}
