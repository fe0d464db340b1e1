import type { Threshold } from "./threshold";

/** When a track is said to hold. */
export const STEADY_THRESHOLDS = {
  steadyProbability: {
    value: 0.95,
    unit: "probability",
    bounds: [0.5, 1],
    reason: "holding is a finding and has to be earned",
    source: "95 of 100 as everywhere",
  },
  steadyInner: {
    value: 1.27,
    unit: "smallest worthwhile changes to one inner limit",
    bounds: [1, 10],
    reason:
      "half of the belief sits on no change; at the full limit a change of just that size was called holding in .35 of seasons, here in .04",
    source: "own simulation",
  },
  steadyInnerEarly: {
    value: 1.13,
    unit: "the same, at the early looks",
    bounds: [1, 10],
    reason:
      "few looks are few chances to be wrong; with the later divisor from the start hardly a season holds by its twelfth session, at 1.1 .056 of changes of just that size were called holding",
    source: "own simulation",
  },
  steadyEarlyLooks: {
    value: 12,
    unit: "used sessions",
    bounds: [4, 10000],
    reason: "by then half of the looks of a season of twenty lie behind",
    source: "own simulation",
  },
  steadyLastAlone: {
    value: 8,
    unit: "times the belief in a change of the last session",
    bounds: [1, 1000],
    reason:
      "a change that has only just happened is what is wrongly called holding; at equal wrong words more seasons hold by their twelfth session",
    source: "own simulation",
  },
  steadyLastTwo: {
    value: 2,
    unit: "times the belief in a change of the last two sessions",
    bounds: [1, 1000],
    reason: "as for the last session alone",
    source: "own simulation",
  },
} as const satisfies Readonly<Record<string, Threshold>>;
