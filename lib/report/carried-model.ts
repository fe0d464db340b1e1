import type { TableModel } from "./basic-model";

/** What another academy said, as a part of a page: always its words, never this academy's. */
export interface CarriedPart {
  readonly margin: string;
  readonly heading: string;
  readonly paragraphs: readonly string[];
  readonly table: TableModel;
}
