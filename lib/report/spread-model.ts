import type { AcademyPart } from "./academy-model";
import type { ChartFiles, Link, TableModel } from "./basic-model";
import type { Tick } from "./chart-model";
import type { GroupFilter } from "./group-filter";

/** Where a level lies against its own band; `none`: it has no band. */
export type SpreadPlace = "inside" | "edge" | "outside" | "none";

/** The latest levels of one fundamental, a dot each, on one axis with the goal band. */
export interface SpreadChart {
  readonly title: string;
  /** What it shows, in a sentence. */
  readonly sentence: string;
  readonly axisTitle: string;
  readonly axis: { readonly from: number; readonly to: number; readonly ticks: readonly Tick[] };
  /** Null: no level has a band. An edge that is null is open. */
  readonly band: { readonly low: number | null; readonly high: number | null } | null;
  readonly edges: readonly { readonly at: number; readonly label: string; readonly side: "low" | "high" }[];
  /** So many dots lie side by side over the axis without touching. */
  readonly columns: number;
  /** One for each group of clubs that may be told apart. */
  readonly strips: readonly SpreadStrip[];
  readonly legend: readonly { readonly place: SpreadPlace; readonly label: string }[];
  readonly files: ChartFiles;
  readonly tableLabel: string;
  /** The same dots, counted by how far from the band they lie. */
  readonly table: TableModel;
}

/** The dots of some tracks over one line. */
export interface SpreadStrip {
  readonly label: string;
  /** By place on the axis; a lane of 0 stands on the line. */
  readonly dots: readonly { readonly at: number; readonly lane: number; readonly place: SpreadPlace }[];
  readonly lanes: number;
}

/** One fundamental across an academy: where its levels stand, what was proved of it, and what helped. */
export interface SpreadPage {
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  /** Null: too few students to count anything. */
  readonly counted: {
    readonly filter: GroupFilter;
    readonly levels: AcademyPart & { readonly texts: readonly string[]; readonly chart: SpreadChart | null };
    readonly moved: AcademyPart;
    /** Null: one group is shown, or none may be told apart. */
    readonly groups: AcademyPart | null;
    readonly helped: AcademyPart & { readonly texts: readonly string[] };
  } | null;
}
