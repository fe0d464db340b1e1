import type { Threshold } from "./threshold";

/** Thresholds of the date at which a gain's level first lies inside its goal band. */
export const REACH_THRESHOLDS = {
  reachHorizon: {
    value: 182,
    unit: "days after the last film",
    bounds: [7, 3650],
    reason: "a curve fitted to one season says nothing of a time longer than that season; 26 weeks",
    source: "own choice",
  },
  reachChance: {
    value: 0.8,
    unit: "probability of the band reached within the horizon",
    bounds: [0.01, 0.999],
    reason: "dates for what may well never come are a promise",
    source: "the customary power of a study",
  },
  reachHeld: {
    value: 0.8,
    unit: "probability that the range of dates holds",
    bounds: [0.01, 0.999],
    reason: "80 of 100 as in every short interval; what may never come is counted in",
    source: "80 of 100 as everywhere",
  },
  reachNever: {
    value: 0.8,
    unit: "probability",
    bounds: [0.01, 0.999],
    reason: "that a gain has stopped short is said four times in five right",
    source: "80 of 100 as everywhere",
  },
  reachAlready: {
    value: 0.1,
    unit: "probability that the band is reached already",
    bounds: [0, 1],
    reason: "a date ahead is not said of what may lie behind",
    source: "own choice",
  },
  reachSessions: {
    value: 4,
    unit: "used sessions since the old level",
    bounds: [2, 40],
    reason: "a pace that slows down shows in no fewer",
    source: "own choice",
  },
  reachGainSd: {
    value: 20,
    unit: "sds of one session mean",
    bounds: [0.1, 1000],
    reason:
      "sd of the whole gain before any film: wide, so that the films and not the belief say where it ends; at 10 an eighth as many dates were said, at 20 they hold as they should",
    source: "own simulation",
  },
  reachStep: {
    value: 0.25,
    unit: "share of belief",
    bounds: [0.001, 0.999],
    reason: "a gain may come all at once; then what isn't reached stays so",
    source: "own simulation",
  },
} as const satisfies Readonly<Record<string, Threshold>>;

/**
 * Scales of a learning curve that are thought of, in usual gaps between sessions; each three fifths of the next. With 30 as
 * well, curves of scale 10 were taken for straight lines, and .59 of their shortest ranges held instead of .76.
 */
export const REACH_SCALES = [1, 2, 3.5, 6, 10, 17] as const;

/** How fast further sessions may come, against the usual gap. */
export const REACH_PACES = [
  { factor: 0.7, share: 0.3 },
  { factor: 1, share: 0.4 },
  { factor: 1.4, share: 0.3 },
] as const;
