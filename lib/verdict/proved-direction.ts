import type { Policy } from "./policy";

/** Evidence of one stretch of sessions at one look. */
export interface StretchEvidence {
  /** Natural log of the Bayes factor of a lasting change. */
  readonly logBayesFactor: number;
  /** Share of the change's weight that points up, 0 to 1. */
  readonly directionUp: number;
}

/** Evidence of a look, and the limit that it is held against there. */
export interface HeldEvidence {
  /** Null: too few sessions. */
  readonly evidence: StretchEvidence | null;
  readonly limit: number;
}

/** Which way the evidence of a look points as clearly as its limit asks; null: neither. */
export function directionAt({ evidence, limit }: HeldEvidence, policy: Policy): "up" | "down" | null {
  if (evidence === null || evidence.logBayesFactor < limit) return null;
  if (evidence.directionUp >= policy.direction) return "up";
  return evidence.directionUp <= 1 - policy.direction ? "down" : null;
}

/**
 * What the evidence of a look has to reach: its limit where the look before bears a change of that direction out, more
 * where it stands alone.
 *
 * @param before the look of the session before, among those that add to the evidence; asked only when needed; null: none
 * @param direction null: either
 */
export function limitAfter(
  now: HeldEvidence,
  before: () => HeldEvidence | null,
  direction: "up" | "down" | null,
  policy: Policy,
): number {
  const held = before();
  const earlier = held === null ? null : directionAt(held, policy);
  const borneOut = earlier !== null && (direction === null || earlier === direction);
  return now.limit + (borneOut ? 0 : policy.limitAlone);
}

/**
 * Which way a change is proved: by two looks in a row that reach their limits in one direction, or by one that goes well
 * beyond its own; null: none is.
 *
 * @param before as in `limitAfter`
 */
export function provedDirection(
  now: HeldEvidence,
  before: () => HeldEvidence | null,
  policy: Policy,
): "up" | "down" | null {
  const direction = directionAt(now, policy);
  if (direction === null || now.evidence === null) return null;
  const { logBayesFactor } = now.evidence;
  if (logBayesFactor >= now.limit + policy.limitAlone) return direction;
  return logBayesFactor >= limitAfter(now, before, direction, policy) ? direction : null;
}

/** Whether a proved change stands after a look: the evidence keeps the hold limit, in its direction. */
export function stillHolds(direction: "up" | "down", evidence: StretchEvidence | null, policy: Policy): boolean {
  if (evidence === null || evidence.logBayesFactor < policy.holdLimit) return false;
  return direction === "up" ? evidence.directionUp > 0.5 : evidence.directionUp < 0.5;
}
