import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import type { Band } from "./series";

/**
 * Mean distance of a draw of N(level, sd^2) from a band, in the unit: 0 inside, else the way to the nearer edge.
 *
 * `sd` 0 or more. A band without edges gives 0. Throws when the band's low edge is above its high edge.
 */
export function expectedDistance(level: number, sd: number, band: Band): number {
  if (band.low !== null && band.high !== null && band.low > band.high)
    throw new RangeError(`a band's low edge must not be above its high edge: ${band.low} > ${band.high}`);
  const below = band.low === null ? 0 : expectedExcess(band.low - level, sd);
  const above = band.high === null ? 0 : expectedExcess(level - band.high, sd);
  return below + above;
}

/** E max(0, shift + sd Z) for a standard normal Z. */
function expectedExcess(shift: number, sd: number): number {
  if (!(sd > 0)) return Math.max(0, shift);
  const z = shift / sd;
  const density = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
  return Math.max(0, shift * normalCdf(z, 0, 1) + sd * density);
}
