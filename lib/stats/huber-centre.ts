/**
 * Middle of one group of replicates that a single wild value can't drag far: Huber's estimate of location.
 *
 * `values`: replicates of one group, at least one, any order, in the unit. `reach`: how far from the
 * centre, in the unit, a replicate counts in full; farther ones count in proportion to reach/distance.
 * One or two values, or a reach of 0, give the plain mean. Six rounds of reweighting from the median:
 * deterministic, and the order of the values changes nothing beyond rounding. Throws on no values.
 *
 * Assumes most replicates scatter symmetrically about one middle.
 * Source: Huber (1964), Robust estimation of a location parameter, Ann. Math. Statist. 35.
 */
export function huberCentre(values: readonly number[], reach: number): number {
  const count = values.length;
  if (count === 0) throw new RangeError("a centre needs at least one value: 0");
  const sorted = Float64Array.from(values).sort();
  if (count <= 2 || !(reach > 0)) {
    let sum = 0;
    for (const value of sorted) sum += value;
    return sum / count;
  }
  const upper = sorted[count >> 1] as number;
  let centre = count % 2 === 1 ? upper : ((sorted[(count >> 1) - 1] as number) + upper) / 2;
  for (let round = 0; round < 6; round++) {
    let weights = 0;
    let shift = 0;
    for (let i = 0; i < count; i++) {
      const residual = (sorted[i] as number) - centre;
      const distance = Math.abs(residual);
      const weight = distance <= reach ? 1 : reach / distance;
      weights += weight;
      shift += weight * residual;
    }
    centre += shift / weights;
  }
  return centre;
}
