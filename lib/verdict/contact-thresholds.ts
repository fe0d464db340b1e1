import { POLICY, type Policy } from "./policy";

/** One threshold of the judgement of contact. No call overrides it: it judges counts, not fundamentals. */
export interface ContactThreshold {
  readonly value: number;
  readonly unit: string;
  readonly reason: string;
  readonly source: string;
}

/** Version of the thresholds below; it changes with any of them. Those of fundamentals have a version of their own. */
export const CONTACT_POLICY_VERSION = "contact-1";

/** Every threshold by which the share of solid strikes is called changed where it differs from a fundamental's. */
export const CONTACT_THRESHOLDS = {
  limit: {
    value: 2.25,
    unit: "natural log of the Bayes factor",
    reason:
      "at 1.75 .064 of unchanged 40-session seasons of .4 whose days differ with correlation .15 were ever called changed, at 2 .055, here .027 (110 seasons, seed 11, which chose it); of changes from .4 to .7 by then .55 to .98 are found",
    source: "own simulation",
  },
  limitEarlyRise: {
    value: 0.25,
    unit: "natural log of the Bayes factor, each look earlier than the ninth",
    reason:
      "the first looks hardly know how much days differ: with it .01 instead of .02 of seasons with a later change were called changed too early, and as many changes were found (seed 11, which chose it)",
    source: "own simulation",
  },
  priorChange: {
    value: 0.2,
    unit: "probability",
    reason: "belief in a lasting change before any count, as of a track without a roster",
    source: "the fallback of the verdict on fundamentals",
  },
  latestBalls: {
    value: 25,
    unit: "balls",
    reason: "raw counts stand beside the share over the latest sessions that hold at least so many",
    source: "own choice",
  },
} as const satisfies Readonly<Record<string, ContactThreshold>>;

/** The policy by which looks at contact are held: that of fundamentals, with the limits of contact. */
export const CONTACT_POLICY: Policy = {
  ...POLICY,
  version: CONTACT_POLICY_VERSION,
  limit: CONTACT_THRESHOLDS.limit.value,
  limitEarlyRise: CONTACT_THRESHOLDS.limitEarlyRise.value,
};
