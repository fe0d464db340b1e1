import type { Threshold } from "./threshold";

/** Thresholds of when a drill is measured again, and of whether what it gave stays without practice. They decide no verdict. */
export const DRILL_THRESHOLDS = {
  practiceDays: {
    value: 14,
    unit: "days of practice that a drill is given before it rests",
    bounds: [1, 60],
    reason:
      "a drill is measured again every one to three weeks; with the days of rest of the owning rule after two weeks of practice the film falls at the end of the third and shows what stays",
    source: "common practice, no source (TRADE.md 1, step 8)",
  },
  copiedWait: {
    value: 28,
    unit: "days from a drill's first to its next measure, the most that are proposed again",
    bounds: [1, 366],
    reason: "three weeks are usual and a fourth is a choice; what is longer was put off by a decision and is no habit",
    source: "own choice",
  },
  retentionTimes: {
    value: 20,
    unit: "times better that rested films fit the new level than the old one, or the old than the new",
    bounds: [3, 1000],
    reason:
      "were all lost again, films would be held for kept in at most 1 of 20, however often one looks; with a change of three sds of a session mean one rested film is mostly enough, with two sds two",
    source: "Ville 1939, as if both levels were known; own simulation in tests/lib/verdict/decide-retention.test.ts",
  },
} as const satisfies Record<string, Threshold>;
