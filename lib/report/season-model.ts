import type { WorkState } from "@/lib/verdict/work-state";
import type { Fact, Glyph, Link, TableModel } from "./basic-model";
import type { SeasonChart, Strip } from "./chart-model";

/** One fundamental in a student's season. */
export interface SeasonRow {
  readonly fundamentalId: string;
  readonly href: string;
  readonly name: string;
  readonly place: "in-hand" | "keep" | "waits";
  readonly glyph: Glyph;
  readonly word: string;
  readonly text: string;
  readonly chart: SeasonChart;
  readonly facts: readonly Fact[];
}

/** The one next thing of a student. */
export interface NextPart {
  readonly margin: string;
  readonly heading: string;
  /** Why it is this one. */
  readonly text: string;
  /** Where it stands and which drill runs for it; empty: it isn't measured. */
  readonly facts: readonly Fact[];
  /** Who chose it and what the order of work says, what is measured first. */
  readonly notes: readonly string[];
  /** What is kept beside it, what stays unknown. */
  readonly beside: readonly string[];
  readonly alters: { readonly heading: string; readonly items: readonly string[] } | null;
  /** A pattern to be careful with; empty: none is shown. */
  readonly cautions: readonly string[];
  /** The one thing to press; null: there is nothing to do, or a drill is to be given, which stands in a part of its own. */
  readonly action: Link | null;
  /** Fundamental for which a drill is given or runs; null or absent: a drill isn't the next thing. */
  readonly drillFor?: string | null;
  readonly links: readonly Link[];
}

/** One link of the chain of fundamentals. */
export type ChainEntry =
  | {
      readonly kind: "measured";
      readonly state: WorkState;
      readonly stateWord: string;
      /** Where it is, with its doubt. */
      readonly short: string;
      /** The chart in the height of a line, for a phone. */
      readonly strip: Strip;
      readonly row: SeasonRow;
    }
  | {
      readonly kind: "unmeasured";
      readonly fundamentalId: string;
      readonly name: string;
      readonly stateWord: string;
      /** Whether it is the one in hand. */
      readonly place: "in-hand" | "waits";
      /** What film would measure it. */
      readonly text: string;
    };

/** What a phone keeps one step away, each by the words that open it. */
export interface SeasonFolds {
  readonly chart: string;
  readonly unmeasured: string;
  readonly keep: string;
  readonly axis: string;
  readonly contact: string;
  readonly settle: string;
  readonly sessions: string;
}

/** The chain of fundamentals in the trade's order, in its phases. */
export interface ChainGroup {
  readonly label: string;
  readonly entries: readonly ChainEntry[];
}

/** One up and one down over the same days, or contact with them; null: nothing of the kind is proved. */
export interface TradeOffPart {
  readonly margin: string;
  readonly heading: string;
  readonly texts: readonly string[];
}

/** The first films of a student: what is missing, and what they could prove. */
export interface FirstWeekPart {
  readonly margin: string;
  /** In one line what is missing. */
  readonly heading: string;
  readonly texts: readonly string[];
  /** Level, place and what could be proved, a row a fundamental; null: no film yet. */
  readonly table: TableModel | null;
  readonly action: Link;
}
