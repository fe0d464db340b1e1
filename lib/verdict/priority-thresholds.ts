import type { Threshold } from "./threshold";

/** Thresholds of what a coach works on next. They decide no verdict. */
export const PRIORITY_THRESHOLDS = {
  askedEnough: {
    value: 2,
    unit: "times that a film of a fundamental was asked for",
    bounds: [0, 20],
    reason: "what a family doesn’t send is asked for twice, then planned without and named unknown",
    source: "SEASON.md 12",
  },
  mostKeeps: {
    value: 2,
    unit: "fundamentals kept beside the one in hand",
    bounds: [0, 20],
    reason: "one active priority and at most two to keep: more is nobody’s practice",
    source: "TRADE.md §1 (e), common practice, no source",
  },
  reversePivotSway: {
    value: 10,
    unit: "% of stance width that the hips are away from the target at the top",
    bounds: [0, 100],
    reason: "the derived flag of the trade; with all the doubt above it",
    source: "TRADE.md §2, common practice, no source",
  },
  reversePivotTilt: {
    value: -5,
    unit: "degrees of side tilt at the top less those at setup",
    bounds: [-90, 0],
    reason: "the derived flag of the trade; with all the doubt below it",
    source: "TRADE.md §2, common practice, no source",
  },
} as const satisfies Record<string, Threshold>;
