import { SETTLE_THRESHOLDS, type Threshold } from "./settle-thresholds";

/** Version of the built-in policy; a verdict names it, and with it every number below. */
export const POLICY_VERSION = "4";

/** Every threshold that turns the engine's numbers into words. Each name is also the key of an override. */
export const THRESHOLDS = {
  firstLook: {
    value: 4,
    unit: "used sessions",
    bounds: [4, 40],
    reason: "a step needs two sessions on either side; before that nothing is claimed",
    source: "the shapes of the model",
  },
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
      "what one look says and the next takes back is mostly noise, so a single look has to say 26 to one; at equal false words a change of 1.5 U was found in .50 instead of .41",
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
  steadyProbability: {
    value: 0.95,
    unit: "probability",
    bounds: [0.5, 1],
    reason: "holding is a finding and has to be earned",
    source: "95 of 100 as everywhere",
  },
  steadyInner: {
    value: 1.28,
    unit: "smallest worthwhile changes to one inner limit",
    bounds: [1, 10],
    reason:
      "half of the belief sits on no change; at the full limit a change of just that size was called holding in .35 of seasons, here in .05",
    source: "own simulation",
  },
  steadyInnerEarly: {
    value: 1.1,
    unit: "the same, at the early looks",
    bounds: [1, 10],
    reason:
      "few looks are few chances to be wrong; with the later divisor from the start hardly a season holds by its twelfth session",
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
  smallestWorthwhile: {
    value: 1.5,
    unit: "sds of one session mean",
    bounds: [0.01, 100],
    reason: "smaller changes can't be ruled out within a season",
    source: "own simulation",
  },
  sameDistance: {
    value: 0.1,
    unit: "smallest worthwhile changes",
    bounds: [0, 10],
    reason: "a proved move that changes the expected distance from the goal by less is neither better nor worse",
    source: "own choice",
  },
  readerSd: {
    value: 1,
    unit: "the track's unit",
    bounds: [1e-9, 1e9],
    reason: "sd of one reading where the track states none",
    source: "own choice; re-reads replace it",
  },
  readerOffset: {
    value: 1.5,
    unit: "reader sds",
    bounds: [0, 100],
    reason: "sd of the offset between readers where the track states none",
    source: "own choice; double reading replaces it",
  },
  listShare: {
    value: 0.05,
    unit: "false-discovery rate over the season",
    bounds: [0.0001, 0.9999],
    reason: "of the words told to families, at most this share may be false",
    source: "Benjamini and Hochberg 1995",
  },
  listCaution: {
    value: 0.75,
    unit: "factor on the anytime p",
    bounds: [0.01, 1000],
    reason:
      "at 1 the season's false-discovery rate stayed below two thirds of what it may be; at this factor it was .03 and more true changes were listed",
    source: "own simulation",
  },
  ownedSessions: {
    value: 3,
    unit: "used sessions in a row",
    bounds: [1, 40],
    reason: "one good day owns nothing",
    source: "common practice, no source",
  },
  ownedSpan: {
    value: 21,
    unit: "days from the first to the last of them",
    bounds: [0, 1000],
    reason: "habits are shown over weeks",
    source: "common practice, no source; Lally and others 2010 on habit time",
  },
  ownedRest: {
    value: 7,
    unit: "days between the last practice and the last of them",
    bounds: [0, 1000],
    reason: "performance right after practice is not learning",
    source: "Guadagnoli and others 2002",
  },
  ownedShare: {
    value: 0.7,
    unit: "share of swings inside the goal band",
    bounds: [0, 1],
    reason: "most swings are inside",
    source: "common practice, no source",
  },
  ownedShareLow: {
    value: 0.55,
    unit: "lower end of the share's 80 of 100 interval",
    bounds: [0, 1],
    reason: "more than half, doubt included",
    source: "common practice, no source",
  },
  dayFromSwing: {
    value: 0.5,
    unit: "day-to-day sd over swing sd",
    bounds: [0, 100],
    reason: "starting value of the day-to-day sd before four sessions and without learned noise",
    source: "common practice, no source",
  },
  learnSessions: {
    value: 5,
    unit: "used sessions",
    bounds: [4, 40],
    reason: "shorter tracks teach the noise model next to nothing",
    source: "own simulation",
  },
  ...SETTLE_THRESHOLDS,
} as const satisfies Readonly<Record<string, Threshold>>;

/** Name of a threshold. */
export type ThresholdName = keyof typeof THRESHOLDS;

/** Swings a session that a plan may ask for. */
export const SETTLE_SWINGS = [3, 5, 8, 10] as const;

/** Shares of the track's median camera sd that a plan may ask for: as it is, or half of it. */
export const SETTLE_CARES = [1, 0.5] as const;

/** The thresholds in force, and the name by which a verdict says so. */
export interface Policy extends Readonly<Record<ThresholdName, number>> {
  readonly version: string;
}

/** Names of all thresholds. */
export const THRESHOLD_NAMES = Object.keys(THRESHOLDS) as ThresholdName[];

/** The built-in policy. */
export const POLICY: Policy = {
  version: POLICY_VERSION,
  ...(Object.fromEntries(THRESHOLD_NAMES.map((name) => [name, THRESHOLDS[name].value])) as Record<
    ThresholdName,
    number
  >),
};
