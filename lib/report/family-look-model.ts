import type { ChartBand, ChartChange, ChartLevel, SeasonChart, Strip } from "./chart-model";
import type { Drawing } from "./drawing-model";
import type { CardFigure } from "./filming-model";

/** A video in a family's picture: a dot with the line of its doubt; hollow where it doesn't count. */
export interface FamilyDot {
  readonly day: number;
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly mark: "used" | "set-aside";
}

/** The season of one fundamental as a family sees it: no unit, no digit, only what stands on the roster's list. */
export interface FamilyPicture {
  readonly heading: string;
  /** The same in one paragraph, for who can't see it. */
  readonly summary: string;
  /** How to read it. */
  readonly reads: readonly string[];
  /** What high up and low down means; empty: the strip has no such edge. */
  readonly high: string;
  readonly low: string;
  /** The word in the strip; empty: there is no strip. */
  readonly inside: string;
  readonly x: SeasonChart["x"];
  readonly y: Pick<SeasonChart["y"], "low" | "high">;
  readonly bands: readonly ChartBand[];
  readonly sessions: readonly FamilyDot[];
  readonly levels: readonly ChartLevel[];
  readonly changes: readonly ChartChange[];
}

/** All else that is measured, one line each. */
export interface FamilyStrips {
  readonly heading: string;
  readonly lead: string;
  readonly rows: readonly { readonly of: string; readonly word: string; readonly strip: Strip }[];
}

/** What was reached and is proved, with its month. */
export interface FamilyMilestones {
  readonly heading: string;
  readonly items: readonly { readonly when: string; readonly text: string }[];
}

/** The numbers, for whoever wants them. */
export interface FamilyNumbers {
  readonly label: string;
  readonly lines: readonly string[];
  readonly items: readonly {
    readonly of: string;
    readonly facts: readonly { readonly name: string; readonly value: string }[];
  }[];
  /** The picture's videos; null: there is no picture. */
  readonly videos: { readonly heading: string; readonly lines: readonly string[] } | null;
}

/** How the next video is made. */
export interface FamilyFilming {
  readonly heading: string;
  /** Praise, then the one tip; empty: there was no video yet. */
  readonly tip: string;
  /** How many swings; empty: nobody asked for a number. */
  readonly swings: string;
  readonly cards: readonly {
    readonly heading: string;
    readonly plan: Drawing;
    readonly caption: string;
    readonly steps: readonly string[];
    /** What the phone shows in its place, and beside it. */
    readonly pictures: readonly CardFigure[];
  }[];
  readonly checks: {
    readonly heading: string;
    readonly items: readonly string[];
    readonly otherwise: string;
    readonly kept: string;
  };
}

/** What of a family's page is drawn, counted or shown how to do; null: nothing of it is on file, or it isn't for this reader. */
export interface FamilyLook {
  readonly picture: FamilyPicture | null;
  readonly strips: FamilyStrips | null;
  readonly milestones: FamilyMilestones | null;
  readonly numbers: FamilyNumbers | null;
  readonly filming: FamilyFilming;
}
