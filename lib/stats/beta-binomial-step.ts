import { type CorrelationBelief, type GroupCounts, WEAK_CORRELATION } from "./group-counts";
import { logSum } from "./log-sum";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireGroupCounts } from "./require-group-counts";
import { requireProbability } from "./require-probability";
import { type ShareGrid, shareGrid } from "./share-grid";
import { type ShareSummary, shareSummary } from "./share-summary";
import { smallestSet } from "./smallest-set";

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
  /** Given a step: the share after it. */
  readonly after: ShareSummary;
  /** The share in force at the last group, over both answers. */
  readonly latest: ShareSummary;
}

/** Groups that a share must have on either side of a step. */
const LEAST_SIDE = 2;

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
  const cells = grid.shares.length;

  const constant = new Float64Array(cells);
  const after = new Float64Array(cells);
  const wholes: { readonly log: number; readonly shares: Float64Array }[] = [];
  const steps: { readonly log: number; readonly place: number; readonly up: number; readonly shares: Float64Array }[] =
    [];
  grid.logs.forEach((_, r) => {
    const weight = belief.weights[r] as number;
    if (weight === 0) return;
    const { before, since } = sides(grid, r);
    const whole = since[0] as Side;
    wholes.push({ log: Math.log(weight) + whole.log, shares: whole.shares });
    for (let place = LEAST_SIDE; place <= count - LEAST_SIDE; place++) {
      const first = before[place] as Side;
      const second = since[place] as Side;
      const up = chanceAbove(first.shares, second.shares);
      steps.push({ log: Math.log(weight) + first.log + second.log, place, up, shares: second.shares });
    }
  });

  const logConstant = logSum(wholes.map((one) => one.log));
  const logSteps = logSum(steps.map((one) => one.log));
  const logBayesFactor = logSteps - Math.log(count - 2 * LEAST_SIDE + 1) - logConstant;
  const odds = Math.log(stepChance / (1 - stepChance)) + logBayesFactor;
  const chance = 1 / (1 + Math.exp(-odds));

  const placeChances = new Array<number>(count).fill(0);
  let upChance = 0;
  for (const one of wholes) addTo(constant, one.shares, Math.exp(one.log - logConstant));
  for (const one of steps) {
    const weight = Math.exp(one.log - logSteps);
    placeChances[one.place] = (placeChances[one.place] as number) + weight;
    upChance += weight * one.up;
    addTo(after, one.shares, weight);
  }
  const latest = after.map((weight, j) => chance * weight + (1 - chance) * (constant[j] as number));
  return ok({
    logBayesFactor,
    chance,
    direction: upChance >= 0.5 ? "up" : "down",
    upChance,
    placeChances,
    places: smallestSet(placeChances, PLACES_HELD),
    after: shareSummary(after),
    latest: shareSummary(latest),
  });
}

/** Log chance of some groups, and the belief about their share. */
interface Side {
  readonly log: number;
  readonly shares: Float64Array;
}

/** At one correlation: entry i of `before`, the groups before group i; of `since`, that group and those after it. */
function sides(grid: ShareGrid, r: number): { before: Side[]; since: Side[] } {
  const lists = grid.logs[r] as readonly Float64Array[];
  const run = (ordered: readonly Float64Array[]): Side[] => {
    const sum = grid.masses.map(Math.log);
    return [sided(sum), ...ordered.map((list) => sided(addTo(sum, list, 1)))];
  };
  return { before: run(lists), since: run([...lists].reverse()).reverse() };
}

/** The sum and its parts in one go, in plain loops: this is where the time goes. */
function sided(logs: Float64Array): Side {
  let largest = Number.NEGATIVE_INFINITY;
  for (const log of logs) if (log > largest) largest = log;
  const shares = new Float64Array(logs.length);
  let total = 0;
  for (let j = 0; j < logs.length; j++) {
    const part = Math.exp((logs[j] as number) - largest);
    shares[j] = part;
    total += part;
  }
  for (let j = 0; j < shares.length; j++) shares[j] = (shares[j] as number) / total;
  return { log: largest + Math.log(total), shares };
}

function addTo(sum: Float64Array, list: Float64Array, weight: number): Float64Array {
  for (let j = 0; j < sum.length; j++) sum[j] = (sum[j] as number) + weight * (list[j] as number);
  return sum;
}

/** Chance that a share of the second belief is above one of the first; within a cell, half. */
function chanceAbove(first: Float64Array, second: Float64Array): number {
  let below = 0;
  let above = 0;
  for (let j = 0; j < first.length; j++) {
    const weight = first[j] as number;
    above += (second[j] as number) * (below + weight / 2);
    below += weight;
  }
  return above;
}
