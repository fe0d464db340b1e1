import type { Link, TableModel } from "./basic-model";
import type { GroupFilter } from "./group-filter";

/** One effect on the axis that all of a comparison share, in the unit of the fundamental; above 0 is better. */
export interface DrawnEffect {
  /** The axis. */
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  /** Null: too few students for a figure. */
  readonly effect: { readonly low: number; readonly value: number; readonly high: number } | null;
  /** `works`: proved; `few`: shown, and too few to be judged; `plain`: neither. */
  readonly look: "works" | "few" | "plain";
  /** The plain before-and-after figure; null: none is shown. */
  readonly plain: number | null;
  /** The same in words. */
  readonly sentence: string;
}

/** How the drills that were given for one fundamental compare. */
export interface ComparedDrillsPage {
  readonly documentTitle: string;
  readonly title: string;
  readonly lede: string;
  readonly back: Link;
  /** The ways to the one comparison that chance makes fair, to the drills themselves, and to where everybody stands in what they are for. */
  readonly ways: readonly Link[];
  readonly fundamentals: Choice | null;
  readonly clubs: Choice | null;
  /** Null: too few students are compared to make groups of them. */
  readonly filter: GroupFilter | null;
  /** What may be said to work; null: no drill was given to anybody. */
  readonly proved: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly items: readonly { readonly heading: string; readonly text: string }[];
    readonly texts: readonly string[];
  } | null;
  readonly evidence: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly legend: readonly { readonly look: "plain" | "few" | "before-after"; readonly label: string }[];
    readonly table: TableModel;
    readonly drawnLabel: string;
    /** A row each. */
    readonly drawn: readonly DrawnEffect[];
    /** The same drills: what is kept, and how many sessions it rests on. */
    readonly details: TableModel;
  } | null;
  readonly sensitivity: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly table: TableModel;
  } | null;
  readonly care: {
    readonly margin: string;
    readonly heading: string;
    readonly texts: readonly string[];
    readonly checkedHeading: string;
    readonly checked: readonly string[];
  } | null;
  readonly method: { readonly margin: string; readonly heading: string; readonly text: string } | null;
}

/** Ways to ask for another comparison. */
export interface Choice {
  readonly label: string;
  readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
}
