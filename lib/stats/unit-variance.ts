import type { LookData } from "./look-data";

/**
 * Variance of one group's value, on the average of a look's groups: the unit in which changes are measured, squared.
 *
 * Groups differ from day to day by `daySd`, widened where the series spreads locally, and each value carries its known
 * error besides.
 *
 * @param daySd sd between days, in the unit of the values; a negative or unreal one is a mistake of the caller
 * @returns in the unit squared; 0 only where nothing varies
 * @throws RangeError on a `daySd` that is no sd
 * @source variance of a sum of independent parts, averaged over groups
 */
export function unitVariance(look: Pick<LookData, "meanSpread" | "meanVariance">, daySd: number): number {
  if (!(Number.isFinite(daySd) && daySd >= 0)) throw new RangeError(`not an sd between days: ${daySd}`);
  return daySd * daySd * look.meanSpread + look.meanVariance;
}
