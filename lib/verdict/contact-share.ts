import type { Direction } from "@/lib/domain/track-verdict";
import { type BetaBinomial, betaBinomial } from "@/lib/stats/beta-binomial";
import { betaBinomialLooks } from "@/lib/stats/beta-binomial-looks";
import { type BetaBinomialStep, betaBinomialStep } from "@/lib/stats/beta-binomial-step";
import type { Outcome } from "@/lib/stats/outcome";
import type { ShareSummary } from "@/lib/stats/share-summary";
import { type ContactClaim, contactClaims } from "./contact-claim";
import type { ContactCount } from "./contact-counts";
import { CONTACT_POLICY, CONTACT_THRESHOLDS } from "./contact-thresholds";
import type { Policy } from "./policy";

/** A share of solid strikes, 0 to 1, with the model's intervals; as much belief below as above. */
export interface ContactLevel {
  readonly estimate: number;
  readonly low80: number;
  readonly high80: number;
  readonly low95: number;
  readonly high95: number;
}

/** A lasting change of the share that is proved by the counts of one student and club group alone. */
export interface ContactChange {
  readonly direction: Direction;
  readonly before: ContactLevel;
  readonly after: ContactLevel;
  /** Days between which it happened, 95 of 100: the last session surely before it, the first surely after. */
  readonly from: string;
  readonly to: string;
  /** Day of the session at which it was first proved. */
  readonly provedOn: string;
}

/** Raw counts over some sessions in a row. */
export interface ContactSpan {
  readonly solid: number;
  readonly balls: number;
  readonly sessions: number;
  readonly from: string;
}

/** What counts of solid strikes say. */
export interface ContactShare {
  readonly policyVersion: string;
  /** The share now, over both answers: changed and not. */
  readonly now: ContactLevel;
  /** How alike the balls of one session are: correlation between two of them, 0 to below 1. */
  readonly overDispersion: number;
  /** Null: no lasting change is proved. */
  readonly change: ContactChange | null;
  /** What stood proved after each counted session; null: nothing. */
  readonly claims: readonly (ContactClaim | null)[];
  /** Null: fewer than four counted sessions. */
  readonly evidence: { readonly logBayesFactor: number; readonly noChange: number } | null;
  /** The latest sessions that hold as many balls as are quoted, or all. */
  readonly latest: ContactSpan;
  readonly all: ContactSpan;
}

/**
 * The share of solid strikes of one student and club group, and whether it has changed for good.
 *
 * Looked at after every session; what one look says depends on no later one. Counts of one session are alike, so that a
 * session of twenty balls says less than twenty sessions of one. One change is looked for: a second one, or a slow one,
 * is told as one step, or takes the first back. Nothing is ever called held: that would need a size of change that does
 * not matter, and none is agreed for contact.
 *
 * @param counted sessions with a stated number of balls, in order of time (see `contactCounts`)
 * @param policy limits of the looks
 * @returns too-few, counting sessions, without any
 */
export function decideContact(
  counted: readonly ContactCount[],
  policy: Policy = CONTACT_POLICY,
): Outcome<ContactShare> {
  const groups = counted.map(({ solid, balls }) => ({ successes: solid, trials: balls }));
  const whole = betaBinomial(groups);
  if (whole.kind === "too-few") return whole;
  const step = betaBinomialStep(groups, CONTACT_THRESHOLDS.priorChange.value);
  const found = step.kind === "ok" ? step.value : null;
  const claims = contactClaims(betaBinomialLooks(groups), policy);
  return {
    kind: "ok",
    value: {
      policyVersion: policy.version,
      now: levelOf((found?.latest ?? whole.value.share) as ShareSummary),
      overDispersion: overDispersion(whole.value, found),
      change: found === null ? null : changeOf(counted, found, claims.at(-1) ?? null),
      claims,
      evidence: found === null ? null : { logBayesFactor: found.logBayesFactor, noChange: 1 - found.chance },
      latest: latestSpan(counted),
      all: spanOf(counted),
    },
  };
}

/** With a change in the counts, a constant share would take the change for days that differ. */
function overDispersion(whole: BetaBinomial, step: BetaBinomialStep | null): number {
  if (step === null) return whole.correlation;
  return step.chance * step.correlation + (1 - step.chance) * whole.correlation;
}

function changeOf(
  counted: readonly ContactCount[],
  step: BetaBinomialStep,
  claim: ContactClaim | null,
): ContactChange | null {
  if (claim === null) return null;
  const dayAt = (index: number): string => (counted[index] as ContactCount).day;
  return {
    direction: claim.direction,
    before: levelOf(step.before),
    after: levelOf(step.after),
    from: dayAt((step.places[0] as number) - 1),
    to: dayAt(step.places.at(-1) as number),
    provedOn: dayAt(claim.provedAt),
  };
}

function levelOf({ mean, equalTail80, equalTail95 }: ShareSummary): ContactLevel {
  return {
    estimate: mean,
    low80: equalTail80.low,
    high80: equalTail80.high,
    low95: equalTail95.low,
    high95: equalTail95.high,
  };
}

function latestSpan(counted: readonly ContactCount[]): ContactSpan {
  let start = counted.length;
  let balls = 0;
  while (start > 0 && balls < CONTACT_THRESHOLDS.latestBalls.value) balls += (counted[--start] as ContactCount).balls;
  return spanOf(counted.slice(start));
}

function spanOf(counted: readonly ContactCount[]): ContactSpan {
  return {
    solid: counted.reduce((sum, count) => sum + count.solid, 0),
    balls: counted.reduce((sum, count) => sum + count.balls, 0),
    sessions: counted.length,
    from: (counted[0] as ContactCount).day,
  };
}
