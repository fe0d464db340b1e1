import type { Threshold } from "./threshold";

/** Thresholds of the watch over an owned track. */
export const WATCH_THRESHOLDS = {
  watchSize: {
    value: 3,
    unit: "sds of one session mean",
    bounds: [0.5, 20],
    reason: "the loss that has to be seen within two sessions; smaller ones are left to the proof of a change",
    source: "what the trade asks of the alarm",
  },
  watchSizeSd: {
    value: 0.5,
    unit: "sds of one session mean",
    bounds: [0.01, 20],
    reason: "a loss may be somewhat smaller or bigger; at 1 .56 instead of .57 were seen within two",
    source: "own simulation",
  },
  watchSizeSdAlone: {
    value: 3,
    unit: "sds of one session mean, for a session alone",
    bounds: [0.01, 20],
    reason:
      "a day that is far outside may be any way outside: at the narrow belief a day seven sds off was taken for a noisy student",
    source: "own choice",
  },
  watchSessions: {
    value: 4,
    unit: "used sessions",
    bounds: [1, 20],
    reason: "what began longer ago is for the proof of a change, which has more to go by then",
    source: "own choice",
  },
  watchBaseline: {
    value: 3,
    unit: "used sessions before the low ones",
    bounds: [1, 40],
    reason: "those on which the owning rule rests at least",
    source: "the owning rule",
  },
  watchLimit: {
    value: 6.1,
    unit: "natural log of the Bayes factor, for two sessions",
    bounds: [0, 50],
    reason:
      "aimed at 5 % of students who own eight fundamentals, lose none and yet meet an alarm in a season of 40 sessions; measured .068 ± .025 on a seed that chose nothing; late in a season it rises as the limit of a change does",
    source: "own simulation",
  },
  watchLimitAlone: {
    value: 2.2,
    unit: "natural log of the Bayes factor, beyond that limit, for a session alone",
    bounds: [0, 50],
    reason: "one bad day is no loss unless it lies far outside: more than four sds where the level is well known",
    source: "own simulation",
  },
  watchLimitLonger: {
    value: 0.2,
    unit: "natural log of the Bayes factor, beyond that limit, for more than two sessions",
    bounds: [0, 50],
    reason: "the alarms are better spent on the first two sessions; within four a loss is seen all the same",
    source: "own simulation",
  },
  watchDoubt: {
    value: 2.5,
    unit: "natural log of the Bayes factor, below the limit",
    bounds: [0, 50],
    reason:
      "the whole noise model, with one odd day, with spread that changes and with a phone that stands wrong for weeks, must not explain the low sessions nearly as well",
    source: "own simulation",
  },
  watchHold: {
    value: 0,
    unit: "natural log of the Bayes factor",
    bounds: [-50, 50],
    reason: "the alarm ends when the sessions fit the old level, with one odd day, as well as a lower one",
    source: "as for an earned word",
  },
  watchAway: {
    value: 42,
    unit: "days without a used session",
    bounds: [1, 1000],
    reason: "one film after a break raises no alarm",
    source: "own choice: six weeks, as for “to be checked”",
  },
} as const satisfies Readonly<Record<string, Threshold>>;
