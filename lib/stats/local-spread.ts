import { huberCentre } from "./huber-centre";

/** Weight of the whole series' spread, in degrees of freedom. */
const WHOLE_WEIGHT = 8;
/** Groups that count as lately: the group itself and those before it. */
const LATELY = 5;
/** A deviation counts at most so many sds. */
const CLIP = 4;

/**
 * How much wider or narrower the replicates have scattered lately than over the whole series: a factor on the
 * variance, one entry a group.
 *
 * Squared deviations from each group's Huber centre, clipped at four sds, over this group and the four before it,
 * pooled with eight degrees of freedom of the whole. A group's factor sees no later group. 1 where nothing is known:
 * single replicates, or an sd of 0. Multiplying everything by a factor changes nothing.
 *
 * `groups`: replicates of each group in date order, at least one each, in the unit. `replicateSd`: sd of one
 * replicate over the whole series, 0 or more, in the unit.
 *
 * Assumes that the spread of a day and of a replicate widen together. Source: own simulation (spread that changes
 * within a season is taken for a change of level without it).
 */
export function localSpread(groups: readonly (readonly number[])[], replicateSd: number): Float64Array {
  const factors = new Float64Array(groups.length).fill(1);
  if (!(replicateSd > 0)) return factors;
  const variance = replicateSd * replicateSd;
  const squares = groups.map((values) => {
    const centre = huberCentre(values, 1.5 * replicateSd);
    return values.reduce((sum, value) => sum + Math.min(Math.abs(value - centre), CLIP * replicateSd) ** 2, 0);
  });
  for (let i = 0; i < groups.length; i++) {
    let sum = WHOLE_WEIGHT * variance;
    let degreesOfFreedom = WHOLE_WEIGHT;
    for (let j = Math.max(0, i - LATELY + 1); j <= i; j++) {
      sum += squares[j] as number;
      degreesOfFreedom += (groups[j] as readonly number[]).length - 1;
    }
    factors[i] = sum / degreesOfFreedom / variance;
  }
  return factors;
}

/**
 * Degrees of freedom with which the spread of lately is known: those of the last five groups, and the whole's weight.
 *
 * `groups`: replicates of each group in date order, at least one each.
 */
export function latelyKnown(groups: readonly (readonly number[])[]): number {
  return groups.slice(-LATELY).reduce((sum, values) => sum + values.length - 1, WHOLE_WEIGHT);
}
