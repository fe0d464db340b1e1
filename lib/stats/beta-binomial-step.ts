import { type CorrelationBelief, type GroupCounts, WEAK_CORRELATION } from "./group-counts";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireGroupCounts } from "./require-group-counts";
import { requireProbability } from "./require-probability";
import { shareGrid } from "./share-grid";
import { type ShareSummary, shareSummary } from "./share-summary";
import { shareSums } from "./share-sums";
import { smallestSet } from "./smallest-set";
import { LEAST_SIDE, type StepPlaces, stepPlaces } from "./step-places";

/** What speaks for one step in the share, and what it is like. */
export interface BetaBinomialStep {
  /** Natural log of the chance of the counts with a step over that with one constant share; above 0 speaks for a step. */
  readonly logBayesFactor: number;
  /** Belief in a step, 0 to 1. */
  readonly chance: number;
  /** Given a step: where the share went, and belief that it went up. */
  readonly direction: "up" | "down";
  readonly upChance: number;
  /** Given a step: belief that the new share began at each group, one a group; 0 for the first two and the last. */
  readonly placeChances: readonly number[];
  /** Smallest set of those groups that holds 95 of 100 of it, as indices from 0, ascending. */
  readonly places: readonly number[];
  /** Given a step: the share before it, and the one after it. */
  readonly before: ShareSummary;
  readonly after: ShareSummary;
  /** Given a step: mean belief about the correlation in a group. */
  readonly correlation: number;
  /** The share in force at the last group, over both answers. */
  readonly latest: ShareSummary;
}

/** Share of belief that the set of places holds. */
const PLACES_HELD = 0.95;

/**
 * Whether the share of successes changed once, at some group, against one constant share.
 *
 * `groups`: in order of time; `stepChance`: belief in a step beforehand, 0.5 for even odds; `belief`: about the correlation
 * in a group, the same before and after. Steps are equally believed at each place that leaves two groups on either
 * side, and every share before and after. Fewer than four groups: too-few, counting groups. Bad input: as
 * `requireGroupCounts`, or a chance outside 0 to 1, a RangeError. Assumptions as `betaBinomial`.
 *
 * Source: Smith, A.F.M. (1975), Biometrika 62, 407-416 (one change of a share); Kass, R.E. & Raftery, A.E. (1995), Journal of
 * the American Statistical Association 90, 773-795; beta-binomial groups integrated on a grid.
 */
export function betaBinomialStep(
  groups: readonly GroupCounts[],
  stepChance: number,
  belief: CorrelationBelief = WEAK_CORRELATION,
): Outcome<BetaBinomialStep> {
  requireGroupCounts(groups, belief);
  requireProbability(stepChance, "stepChance");
  const count = groups.length;
  if (count < 2 * LEAST_SIDE) return tooFew(count, 2 * LEAST_SIDE);
  const grid = shareGrid(groups, belief);
  const sums = belief.correlations.map((_, r) => shareSums(grid, r));
  const places = stepPlaces(sums, belief, count);
  const odds = Math.log(stepChance / (1 - stepChance)) + places.logBayesFactor;
  const chance = 1 / (1 + Math.exp(-odds));
  const { before, after, constant, placeChances, upChance } = mixed(places, count, grid.shares.length);
  const latest = after.map((weight, j) => chance * weight + (1 - chance) * (constant[j] as number));
  return ok({
    logBayesFactor: places.logBayesFactor,
    chance,
    direction: upChance >= 0.5 ? "up" : "down",
    upChance,
    placeChances,
    places: smallestSet(placeChances, PLACES_HELD),
    before: shareSummary(before),
    after: shareSummary(after),
    correlation: places.steps.reduce(
      (sum, one) => sum + Math.exp(one.log - places.logSteps) * (belief.correlations[one.correlation] as number),
      0,
    ),
    latest: shareSummary(latest),
  });
}

/** Every answer weighed by its chance: beliefs about the share before and after a step and about a constant one, and the places. */
function mixed({ wholes, steps, logConstant, logSteps }: StepPlaces, count: number, cells: number) {
  const constant = new Float64Array(cells);
  const before = new Float64Array(cells);
  const after = new Float64Array(cells);
  const placeChances = new Array<number>(count).fill(0);
  let upChance = 0;
  for (const one of wholes) addTo(constant, one.shares, Math.exp(one.log - logConstant));
  for (const one of steps) {
    const weight = Math.exp(one.log - logSteps);
    placeChances[one.place] = (placeChances[one.place] as number) + weight;
    upChance += weight * one.up;
    addTo(before, one.before.shares, weight);
    addTo(after, one.after.shares, weight);
  }
  return { before, after, constant, placeChances, upChance };
}

function addTo(sum: Float64Array, list: Float64Array, weight: number): void {
  for (let j = 0; j < sum.length; j++) sum[j] = (sum[j] as number) + weight * (list[j] as number);
}
