import type { CorrelationBelief } from "./group-counts";
import { logSum } from "./log-sum";
import { shareAbove } from "./share-above";
import type { ShareSide } from "./share-side";
import type { ShareSums } from "./share-sums";

/** Groups that a share must have on either side of a step. */
export const LEAST_SIDE = 2;

/** One constant share, at one correlation. */
export interface WholeStretch {
  /** Log of its belief beforehand times the chance of the counts. */
  readonly log: number;
  readonly shares: Float64Array;
}

/** One step, at one place and one correlation. */
export interface PlacedStep {
  readonly log: number;
  /** Index of its correlation in the belief. */
  readonly correlation: number;
  /** First group of the new share, from 0. */
  readonly place: number;
  readonly before: ShareSide;
  readonly after: ShareSide;
  /** Belief that the share went up. */
  readonly up: number;
}

/** Every answer about the first groups, each with its weight. */
export interface StepPlaces {
  readonly wholes: readonly WholeStretch[];
  readonly steps: readonly PlacedStep[];
  readonly logConstant: number;
  /** Of all steps, summed over their places. */
  readonly logSteps: number;
  /** Steps spread evenly over their places, over one constant share. */
  readonly logBayesFactor: number;
}

/**
 * What the first groups say of one constant share and of a step at each place that leaves two groups on either side.
 *
 * `sums`: one a correlation of `belief`, in its order; `count`: how many groups are looked at, from the first, at least four
 * (fewer throw a RangeError). `befores` keeps the sides before each place between calls that look at more and more groups.
 *
 * Source: Smith, A.F.M. (1975), Biometrika 62, 407-416 (from memory), with beta-binomial groups on a grid.
 */
export function stepPlaces(
  sums: readonly ShareSums[],
  belief: CorrelationBelief,
  count: number,
  befores: Map<string, ShareSide> = new Map(),
): StepPlaces {
  if (!(count >= 2 * LEAST_SIDE)) throw new RangeError(`a step needs ${2 * LEAST_SIDE} groups, got ${count}`);
  const wholes: WholeStretch[] = [];
  const steps: PlacedStep[] = [];
  sums.forEach((each, r) => {
    const weight = belief.weights[r] as number;
    if (weight === 0) return;
    const whole = each.stretch(0, count);
    wholes.push({ log: Math.log(weight) + whole.log, shares: whole.shares });
    for (let place = LEAST_SIDE; place <= count - LEAST_SIDE; place++) {
      const name = `${r} ${place}`;
      const before = befores.get(name) ?? each.stretch(0, place);
      befores.set(name, before);
      const after = each.stretch(place, count);
      const log = Math.log(weight) + before.log + after.log;
      steps.push({ log, correlation: r, place, before, after, up: shareAbove(before.shares, after.shares) });
    }
  });
  const logConstant = logSum(wholes.map((one) => one.log));
  const logSteps = logSum(steps.map((one) => one.log));
  const logBayesFactor = logSteps - Math.log(count - 2 * LEAST_SIDE + 1) - logConstant;
  return { wholes, steps, logConstant, logSteps, logBayesFactor };
}
