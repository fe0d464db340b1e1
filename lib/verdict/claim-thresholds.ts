import type { Threshold } from "./threshold";

/** When evidence becomes a change that is said, and when it is no more. */
export const CLAIM_THRESHOLDS = {
  limit: {
    value: 1.85,
    unit: "natural log of the Bayes factor",
    bounds: [0, 50],
    reason:
      "odds of six to one at two looks in a row, from the ninth look to the twentieth; with more asked before and after, false words stay below 5 % of unchanged 40-session seasons",
    source: "own simulation",
  },
  limitAlone: {
    value: 1.5,
    unit: "natural log of the Bayes factor, beyond the limit",
    bounds: [0, 50],
    reason:
      "what one look says and the next takes back is mostly noise, so a single look has to say 29 to one; at equal false words a change of 1.5 U was found in .50 instead of .41",
    source: "own simulation",
  },
  limitFurther: {
    value: 0.75,
    unit: "natural log of the Bayes factor, beyond the limit, for a change after a proved one",
    bounds: [0, 10],
    reason:
      "the sessions of a proved new level are few and looked at anew, which takes true words back; a true loss is still called so",
    source: "own simulation",
  },
  limitEarlyLooks: {
    value: 9,
    unit: "looks",
    bounds: [1, 40],
    reason: "before this look a track hardly knows its own noise, and the pool's may not be its own",
    source: "own simulation",
  },
  limitEarlyRise: {
    value: 0.5,
    unit: "natural log of the Bayes factor, each look earlier than that",
    bounds: [0, 10],
    reason: "of students far noisier than their pool, most false words came in the first looks",
    source: "own simulation",
  },
  limitLateLooks: {
    value: 20,
    unit: "looks",
    bounds: [1, 10000],
    reason:
      "by then a change early in the season is found or too small; what a constant limit adds later is mostly false",
    source: "own simulation",
  },
  limitLateRise: {
    value: 0.06,
    unit: "natural log of the Bayes factor, each look beyond that and within the free ones",
    bounds: [0, 10],
    reason: "more looks are more chances of a false word, while more sessions prove a true change more strongly",
    source: "own simulation",
  },
  limitFreeLooks: {
    value: 40,
    unit: "looks",
    bounds: [1, 10000],
    reason: "the promise for a season was measured over this many looks",
    source: "own simulation",
  },
  limitRise: {
    value: 0.1,
    unit: "natural log of the Bayes factor, each ten looks begun beyond the free ones",
    bounds: [0, 10],
    reason: "more looks are more chances of a false word",
    source: "own simulation",
  },
  holdLimit: {
    value: -0.5,
    unit: "natural log of the Bayes factor",
    bounds: [-50, 50],
    reason:
      "an earned word is taken back when the films fit no change clearly better than the change; at 1 .13 of proved changes of 2 U lost their word while they held, here .03 over 40 sessions; at -1 a true loss was called so two sessions later",
    source: "own simulation",
  },
  direction: {
    value: 0.95,
    unit: "share of the change's weight",
    bounds: [0.5, 1],
    reason: "a change is only claimed when its direction is as good as certain",
    source: "95 of 100 as everywhere",
  },
} as const satisfies Readonly<Record<string, Threshold>>;
