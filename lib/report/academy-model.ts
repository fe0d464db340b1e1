import type { Link, TableModel } from "./basic-model";
import type { GroupFilter } from "./group-filter";

/** A part of an academy's page: its finding, a table of the numbers, and where they lead. */
export interface AcademyPart {
  readonly margin: string;
  readonly explains: string;
  readonly heading: string;
  readonly table: TableModel | null;
  readonly links: readonly Link[];
}

/** Gains above a line and slips below it, a column a month. */
export interface MonthChart {
  /** What it shows, in a sentence. */
  readonly sentence: string;
  readonly gains: string;
  readonly slips: string;
  readonly months: readonly { readonly label: string; readonly gains: number; readonly slips: number }[];
  /** The highest column on either side; at least 1. */
  readonly most: number;
}

/** How an academy gets on, in counts. */
export interface AcademyPage {
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  /** To how drills compare, how readers of the same films agree, and the sheet for whoever answers for the academy. */
  readonly ways: readonly Link[];
  /** Null: there are too few students to count anything. */
  readonly counted: {
    readonly filter: GroupFilter;
    readonly proved: AcademyPart & { readonly chart: MonthChart };
    readonly stalled: AcademyPart;
    readonly levels: AcademyPart;
    readonly open: AcademyPart;
    readonly films: AcademyPart;
    /** Null: nobody was filmed. */
    readonly recorded: AcademyPart | null;
    /** How all of it is counted, in one paragraph, for whoever gets it on paper. */
    readonly method: { readonly margin: string; readonly heading: string; readonly text: string };
  } | null;
}
