import type { AskingState } from "@/lib/domain/asking";
import type { AskPlanPart } from "./ask-plan-model";
import type { ChartFiles, Fact, Glyph, Link, TableModel } from "./basic-model";
import type { SharperPart } from "./build-sharper";
import type { CarriedPart } from "./carried-model";
import type { ChartPractice, ChartRibbon, SeasonChart } from "./chart-model";
import type { ClubsBesidePart } from "./clubs-beside-model";
import type { ContactPart } from "./contact-model";
import type { FiguresPart } from "./figures-model";
import type { KeepPart } from "./keep-list-model";
import type { ChainGroup, FirstWeekPart, NextPart, SeasonFolds, SeasonRow, TradeOffPart } from "./season-model";

export type { ChartWords, Fact, FrameModel, Glyph, Link, TableModel } from "./basic-model";
export type { ContactPart, ShareStrip } from "./contact-model";
export type { NotedStudents, ProvedRow, RosterCell, RosterPage, RosterRow } from "./roster-model";
export type { SeasonRow } from "./season-model";

/** A student's season. */
export interface SeasonPage {
  readonly title: string;
  readonly documentTitle: string;
  readonly lede: string;
  readonly back: Link;
  readonly proved: {
    readonly margin: string;
    readonly heading: string;
    readonly items: readonly {
      readonly glyph: Glyph;
      readonly heading: string;
      readonly text: string;
      readonly href: string;
    }[];
    readonly empty: string;
  };
  /** Null: no film yet, so that the first films are the one next thing. */
  readonly next: NextPart | null;
  /** What is owned, to keep; null: nothing is measured. */
  readonly keep: KeepPart | null;
  readonly evidence: {
    readonly margin: string;
    readonly explains: string;
    readonly heading: string;
    readonly groups: readonly { readonly label: string; readonly rows: readonly SeasonRow[] }[];
    /** All the charts as one drawing; null: there is none. */
    readonly files: ChartFiles | null;
    /** The season's drills on the time axis that the charts share; absent: none. */
    readonly drills?: readonly ChartRibbon[];
    /** Events on that axis; absent: none. */
    readonly events?: readonly ChartRibbon[];
    /** The events in one sentence; absent or empty: none. */
    readonly marked?: string;
    /** Practice under it; null or absent: none. */
    readonly practice?: ChartPractice | null;
  };
  /** The fundamentals in the order of work, with what isn’t measured among them. */
  readonly chain: readonly ChainGroup[];
  readonly folds: SeasonFolds;
  readonly clubGroups: {
    readonly label: string;
    readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
  } | null;
  readonly drills: TableModel | null;
  /** Solid strikes beside the fundamentals; null: no session of the club group. */
  readonly contact: ContactPart | null;
  readonly settle: { readonly margin: string; readonly heading: string; readonly table: TableModel } | null;
  /** One up and one down over the same days; null: nothing of the kind is proved. */
  readonly tradeOffs: TradeOffPart | null;
  /** What another academy said; null or absent: nothing. */
  readonly carried?: CarriedPart | null;
  readonly sessions: { readonly margin: string; readonly heading: string; readonly table: TableModel };
  /** The first films; null: they are there. */
  readonly firstWeek: FirstWeekPart | null;
  /** The one or two that are pressed most, at the head. */
  readonly first: readonly Link[];
  /** Everything else about the student, at the foot. */
  readonly actions: readonly Link[];
  readonly actionsHead: { readonly margin: string; readonly heading: string };
  readonly cautions: readonly string[];
  /** Sessions that wait or can't be judged, said in sentences; empty: none. */
  readonly notices: readonly string[];
}

/** One fundamental of a student. */
export interface FundamentalPage {
  readonly title: string;
  readonly documentTitle: string;
  readonly lede: string;
  readonly back: Link;
  readonly verdict: {
    readonly margin: string;
    readonly glyph: Glyph;
    readonly word: string;
    /** The verdict in a sentence. */
    readonly heading: string;
    /** Place against the band, said first. */
    readonly position: string;
    readonly facts: readonly Fact[];
    /** What the roster's list adds; empty: nothing. */
    readonly listing: string;
    /** When it lies inside the band at this pace, or why that can't be said; empty: no question. */
    readonly reach: string;
    /** Whether a proved gain stays without practice; empty or absent: no question. */
    readonly stays?: string;
    /** The alarm over what is owned, in a sentence; empty: none. */
    readonly watch: string;
    readonly detail: readonly string[];
    readonly detailLabel: string;
    /** Every number that went in; null or absent: not told. */
    readonly figures?: FiguresPart | null;
    /** The page that says how a verdict comes about. */
    readonly decides: Link;
  };
  /** The next act in one sentence, and where its reason stands; null or absent: not told. */
  readonly next?: { readonly margin: string; readonly heading: string; readonly link: Link } | null;
  readonly evidence: {
    readonly margin: string;
    readonly explains: string;
    readonly chart: SeasonChart;
    readonly table: TableModel;
    /** Where the sessions of the table lead. */
    readonly leads?: string;
    readonly links: readonly Link[];
    readonly files: ChartFiles;
  };
  readonly beforeAfter: {
    readonly margin: string;
    readonly heading: string;
    readonly table: TableModel;
    /** Each row's level as an interval against the band, drawn in one more column; absent: none. */
    readonly intervals?: {
      readonly label: string;
      readonly from: number;
      readonly to: number;
      readonly bandLow: number | null;
      readonly bandHigh: number | null;
      readonly rows: readonly {
        readonly low: number;
        readonly value: number;
        readonly high: number;
        readonly sentence: string;
      }[];
    };
  } | null;
  readonly doubt: {
    readonly margin: string;
    readonly heading: string;
    readonly parts: readonly {
      readonly name: string;
      readonly share: number;
      readonly shareLabel: string;
      readonly sizeLabel: string;
      readonly pattern: "solid" | "mid" | "hatch" | "light";
    }[];
    /** What would make one session sharper; null or absent: not known. */
    readonly sharper?: SharperPart | null;
    /** What a checked phone would have been worth, and would be from now on. */
    readonly square: readonly string[];
  } | null;
  /** The same with each club group; null or absent: there is one. */
  readonly clubsBeside?: ClubsBesidePart | null;
  readonly settle: {
    readonly margin: string;
    readonly heading: string;
    readonly texts: readonly string[];
    /** What can be decided about the question, a button each. */
    readonly asks: readonly { readonly state: AskingState; readonly label: string; readonly explains: string }[];
    /** What other films would tell; null or absent: nothing is asked. */
    readonly asked?: AskPlanPart | null;
  } | null;
  /** What a decision says of the track it is about. */
  readonly track: { readonly studentId: string; readonly fundamentalId: string; readonly clubGroup: string };
  readonly readings: { readonly margin: string; readonly heading: string; readonly table: TableModel };
  /** What another academy said; null or absent: nothing. */
  readonly carried?: CarriedPart | null;
  readonly clubGroups: {
    readonly label: string;
    readonly links: readonly (Link & { readonly current: "yes" | "no" })[];
  } | null;
  readonly cautions: readonly string[];
  readonly notices: readonly string[];
}
