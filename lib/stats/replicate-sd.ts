import { huberCentre } from "./huber-centre";

/** Spread of replicates within groups, its own evidence and what it was pooled to. */
export interface ReplicateSd {
  /** Sd of one replicate about its group's state, reading error included, in the unit; 0 where no replicate ever differed. */
  readonly sd: number;
  /** Replicates beyond the first of each group: sum of (m - 1). */
  readonly degreesOfFreedom: number;
  /** The series' own robust sd; null below 4 degrees of freedom. */
  readonly own: number | null;
}

/**
 * Robust sd of replicates within groups, helped out by the pool where the series has few of its own.
 *
 * `groups`: replicates of each group, in the unit, at least one each. `readingErrorSd`: known sd of one
 * reading, the answer of last resort. `poolSd`: median own sd of the pool; null where unknown.
 *
 * Own: scale s0 = the larger of (median |difference| of all pairs within groups) / 0.9539 and 0.6 of the
 * pooled sd; squares about each group's Huber centre (reach 1.5 s0) clipped at 2.5 s0; 1.03 mends the
 * clipping for Gaussian replicates. With a pool sd it counts as four more degrees of freedom. Below four
 * of its own: the pool's sd, and without that the reading error.
 *
 * Assumes one spread for all groups. Source for the pair scale: Rousseeuw & Croux (1993), JASA 88.
 */
export function replicateSd(
  groups: readonly (readonly number[])[],
  readingErrorSd: number,
  poolSd: number | null,
): ReplicateSd {
  let degreesOfFreedom = 0;
  let pairCount = 0;
  for (const group of groups) {
    degreesOfFreedom += group.length - 1;
    pairCount += (group.length * (group.length - 1)) / 2;
  }
  if (degreesOfFreedom < 4) return { sd: poolSd ?? readingErrorSd, degreesOfFreedom, own: null };
  const pairs = new Float64Array(pairCount);
  let at = 0;
  let squares = 0;
  for (const group of groups) {
    let pairSquares = 0;
    for (let i = 1; i < group.length; i++) {
      for (let j = 0; j < i; j++) {
        const difference = Math.abs((group[i] as number) - (group[j] as number));
        pairs[at++] = difference;
        pairSquares += difference * difference;
      }
    }
    squares += pairSquares / group.length;
  }
  pairs.sort();
  const upper = pairs[pairCount >> 1] as number;
  const median = pairCount % 2 === 1 ? upper : ((pairs[(pairCount >> 1) - 1] as number) + upper) / 2;
  const scale = Math.max(median / 0.9539, 0.6 * Math.sqrt(squares / degreesOfFreedom));
  let clipped = 0;
  for (const group of groups) {
    if (group.length === 1) continue;
    const centre = huberCentre(group, 1.5 * scale);
    for (const value of group) clipped += Math.min(Math.abs(value - centre), 2.5 * scale) ** 2;
  }
  const ownVariance = (1.03 * clipped) / degreesOfFreedom;
  const own = Math.sqrt(ownVariance);
  if (poolSd === null) return { sd: own, degreesOfFreedom, own };
  const sd = Math.sqrt((degreesOfFreedom * ownVariance + 4 * poolSd * poolSd) / (degreesOfFreedom + 4));
  return { sd, degreesOfFreedom, own };
}
