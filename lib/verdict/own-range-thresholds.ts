import type { Threshold } from "./threshold";

/** Thresholds of the question, after saving, whether a value may be a slip of the pen. They decide no verdict. */
export const OWN_RANGE_THRESHOLDS = {
  ownRangeReadings: {
    value: 10,
    unit: "earlier readings",
    bounds: [3, 1000],
    reason: "two films of five swings: fewer say little of what this student's swings reach",
    source: "own choice",
  },
  ownRangeMargin: {
    value: 0.25,
    unit: "share of the span of the earlier readings, beyond its end",
    bounds: [0, 5],
    reason:
      "of 11 alike swings the last is an extreme in 2 of 11, and most extremes are true; a quarter of the span beyond, a swing of the same student lies in about 1 of 20 with 10 earlier readings and in 1 of 100 with 25",
    source: "simulation in tests/lib/verdict/own-range.test.ts",
  },
} as const satisfies Record<string, Threshold>;
