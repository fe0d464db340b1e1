import type { TableModel } from "./basic-model";

/** A labelled place on an axis; `at` is a day number or a value in the unit. */
export interface Tick {
  readonly at: number;
  readonly label: string;
}

/** A goal band as it held over a stretch of days. */
export interface ChartBand {
  readonly from: number;
  readonly to: number;
  /** Null: no edge on that side; the field runs to the end of the axis. */
  readonly low: number | null;
  readonly high: number | null;
  readonly lowLabel: string | null;
  readonly highLabel: string | null;
}

/** How a session is drawn: judged; with an aid or in a lesson; set aside. */
export type SessionMark = "used" | "aided" | "set-aside";

/** One session: a dot, its bar of doubt (95 of 100) and its swings. */
export interface ChartSession {
  readonly day: number;
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly swings: readonly number[];
  readonly mark: SessionMark;
  readonly dateLabel: string;
  readonly meanLabel: string;
  readonly doubtLabel: string;
  /** Why it is set aside or apart; empty when it is judged. */
  readonly reason: string;
  /** One sentence for a tooltip and for a screen reader. */
  readonly sentence: string;
}

/** A level that held over a stretch of days. `proved` is drawn whole, `open` dashed with a hatched shade. */
export interface ChartLevel {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly standing: "proved" | "open";
  readonly label: string;
}

/** A proved change: the stretch of days in which it happened, and its wedge. */
export interface ChartChange {
  readonly from: number;
  readonly to: number;
  readonly direction: "toward" | "away" | "neither";
  readonly before: number;
  readonly after: number;
  readonly afterLow: number;
  readonly afterHigh: number;
  readonly label: string;
  readonly daysLabel: string;
}

/** A drill or an event under the axis. */
export interface ChartRibbon {
  readonly from: number;
  readonly to: number;
  readonly label: string;
  /** It goes on past the last day drawn; absent: it ends where it is drawn to end. */
  readonly end?: "open";
}

/** Practice of the weeks in one count, minutes or balls. */
export interface PracticeLane {
  /** What is counted, and the highest bar. */
  readonly label: string;
  readonly bars: readonly {
    readonly from: number;
    /** The day after the last. */
    readonly to: number;
    /** Of the highest, from 0 to 1. */
    readonly share: number;
    /** One sentence for a tooltip. */
    readonly label: string;
  }[];
}

/** Practice under a time axis. */
export interface ChartPractice {
  readonly lanes: readonly PracticeLane[];
  /** The same in one sentence, for who can't see it. */
  readonly summary: string;
  /** The bars' numbers. */
  readonly table: TableModel;
}

/** A learning curve over the chart, and the days in which it reaches the band. */
export interface ChartCurve {
  /** In order of days; values in the unit. `low` to `high` holds 80 of 100. */
  readonly points: readonly {
    readonly day: number;
    readonly middle: number;
    readonly low: number;
    readonly high: number;
  }[];
  /** Days in which the edge `at` is reached; null: no dates are said. */
  readonly arrival: { readonly from: number; readonly to: number; readonly at: number; readonly label: string } | null;
  /** How to read it. */
  readonly explains: string;
  /** The same in one sentence, for who can't see it. */
  readonly sentence: string;
  readonly table: TableModel;
}

/** The season chart of one track; the static drawing and the live one draw this and compute nothing. */
export interface SeasonChart {
  /** The chart's finding. */
  readonly heading: string;
  /** The same in one paragraph, for who can't see it. */
  readonly summary: string;
  /** Short, over the value axis: "deg". */
  readonly unitLabel: string;
  /** Two or three words beside the band's field: "goal band". */
  readonly bandLabel: string;
  /** The word over each level's value in the story lane: "level"; absent: none. */
  readonly levelLabel?: string;
  readonly x: { readonly from: number; readonly to: number; readonly ticks: readonly Tick[] };
  readonly y: { readonly low: number; readonly high: number; readonly ticks: readonly Tick[] };
  readonly bands: readonly ChartBand[];
  readonly sessions: readonly ChartSession[];
  readonly levels: readonly ChartLevel[];
  readonly changes: readonly ChartChange[];
  readonly drills: readonly ChartRibbon[];
  readonly events: readonly ChartRibbon[];
  /** Null or absent: nothing of a curve is said. */
  readonly curve?: ChartCurve | null;
  /** Beneath drills and events; null or absent: none was logged. */
  readonly practice?: ChartPractice | null;
}

/** A strip as high as a line of text; y runs from 0 (bottom) to 1 (top), the band always from 1/3 to 2/3. */
export interface Strip {
  readonly summary: string;
  /** x from 0 to 1 over the roster's stretch of days. */
  readonly dots: readonly { readonly x: number; readonly y: number; readonly mark: SessionMark }[];
  readonly levels: readonly { readonly x0: number; readonly x1: number; readonly y: number }[];
  readonly changes: readonly {
    readonly x0: number;
    readonly x1: number;
    readonly y0: number;
    readonly y1: number;
    readonly direction: "toward" | "away" | "neither";
  }[];
  /** Which edges the band has. */
  readonly edges: "both" | "low" | "high" | "none";
  /** Where the level lies now and its 95 of 100, as heights; null: not known. `settled`: wholly inside or wholly outside. */
  readonly now: {
    readonly low: number;
    readonly y: number;
    readonly high: number;
    readonly place: "settled" | "edge";
  } | null;
}
