import { gaussLegendre } from "./gauss-legendre";
import { householderQr } from "./householder-qr";

/** Places at least, and places more for each sd of one step that the limits are away: 9 digits or more. */
const PLACES = 24;
const PLACES_A_STEP = 4;

/** Beyond this, runs are longer than a hundred million values and the equation has no digits left. */
const MOST_LIMIT = 6;

/**
 * Mean number of values until a two-sided EWMA chart with settled limits signals, the average starting at the target.
 *
 * `weight`: of the newest value, above 0 to 1; `limit`: distance of the limits in sds of the settled average, above 0 to 6; `shift`:
 * true mean less target in sds of one value, 0 in control. Result: a number of values, 1 or more. Bad input: a weight
 * outside (0, 1], a limit outside (0, 6], NaN or infinity throws a RangeError. Assumes independent normal values
 * of the known sd. Solves the integral equation of the mean run length at Gauss's places.
 *
 * Source: Crowder, S.V. (1987), Technometrics 29, 401-407.
 */
export function ewmaRunLength(weight: number, limit: number, shift: number): number {
  if (!(limit > 0 && limit <= MOST_LIMIT))
    throw new RangeError(`limit must lie above 0, to ${MOST_LIMIT}, got ${limit}`);
  if (!(weight > 0 && weight <= 1)) throw new RangeError(`weight must lie above 0, to 1, got ${weight}`);
  if (!Number.isFinite(shift)) throw new RangeError(`shift must be a finite number, got ${shift}`);
  const reach = limit * Math.sqrt(weight / (2 - weight));
  const count = Math.ceil(PLACES + (PLACES_A_STEP * reach) / weight);
  const { places, weights } = gaussLegendre(count, -reach, reach);
  const density = (to: number, from: number): number => {
    const z = (to - (1 - weight) * from) / weight - shift;
    return Math.exp(-0.5 * z * z) / (Math.sqrt(2 * Math.PI) * weight);
  };
  const columns = places.map((to, j) =>
    places.map((from, i) => (i === j ? 1 : 0) - (weights[j] as number) * density(to, from)),
  );
  const lengths = householderQr(columns).solve(places.map(() => 1));
  return lengths.reduce((sum, length, j) => sum + (weights[j] as number) * density(places[j] as number, 0) * length, 1);
}
