import { CLAIM_THRESHOLDS } from "./claim-thresholds";
import { COMPARE_THRESHOLDS } from "./compare-thresholds";
import { REACH_THRESHOLDS } from "./reach-thresholds";
import { SETTLE_THRESHOLDS } from "./settle-thresholds";
import { STEADY_THRESHOLDS } from "./steady-thresholds";
import type { Threshold } from "./threshold";
import { WATCH_THRESHOLDS } from "./watch-thresholds";

/** Version of the built-in policy; a verdict names it, and with it every number below. */
export const POLICY_VERSION = "5";

/** Every threshold that turns the engine's numbers into words. Each name is also the key of an override. */
export const THRESHOLDS = {
  firstLook: {
    value: 4,
    unit: "used sessions",
    bounds: [4, 40],
    reason: "a step needs two sessions on either side; before that nothing is claimed",
    source: "the shapes of the model",
  },
  ...CLAIM_THRESHOLDS,
  ...STEADY_THRESHOLDS,
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
    value: 0.5,
    unit: "factor on the anytime p",
    bounds: [0.01, 1000],
    reason:
      "at .75 the season's false-discovery rate stayed below half of what it may be; at .4 it went beyond it where 15 % change",
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
  ...REACH_THRESHOLDS,
  ...WATCH_THRESHOLDS,
  ...COMPARE_THRESHOLDS,
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
