import { gaussLegendre } from "./gauss-legendre";
import { householderQr } from "./householder-qr";
import { normalUpperTail } from "./normal-distribution";
import { requirePositive } from "./require-positive";

/** Places at least, and places more for each sd of the limit: 9 digits or more. */
const PLACES = 24;
const PLACES_AN_SD = 4;

/** A chance to pass below this can't be told from 0. */
const LEAST_CHANCE = 1e-14;

/** Which departures the chart looks for. */
export type CusumSides = "two-sided" | "upper";

/**
 * Mean number of values until a cusum chart signals, its sums starting at 0.
 *
 * `slack`: 0 or more; `limit`: above 0; `shift`: true mean less target, 0 in control; all in sds of one value. Result: a
 * number of values, 1 or more. Bad input: a limit that isn't above 0, a slack below 0, NaN or infinity throws a
 * RangeError. Beyond some 1e10 values digits are lost, and 1e14 is the longest said. Assumes independent normal values of
 * the known sd. One side: a run starts afresh whenever its sum is back at 0; the integral equations of the steps of such a
 * run and of its chance to pass the limit are solved at Gauss's places. Two sides: their rates of signals add up, which
 * is exact for equal limits, because one sum starts again from 0 whenever the other signals.
 *
 * Source: Page, E.S. (1954), Biometrika 41, 100-115 (equation); van Dobben de Bruyn, C.S. (1968), Cumulative Sum Tests,
 * 3 (two sides).
 */
export function cusumRunLength(slack: number, limit: number, shift: number, sides: CusumSides): number {
  requirePositive(limit, "limit");
  if (!(slack >= 0 && Number.isFinite(slack))) throw new RangeError(`slack must be 0 or more, got ${slack}`);
  if (!Number.isFinite(shift)) throw new RangeError(`shift must be a finite number, got ${shift}`);
  const upper = oneSided(slack - shift, limit);
  return sides === "upper" ? upper : 1 / (1 / upper + 1 / oneSided(slack + shift, limit));
}

/** Mean run length of max(0, sum + Z - drift) until it passes the limit: steps of a run above 0 over its chance to pass. */
function oneSided(drift: number, limit: number): number {
  const { places, weights } = gaussLegendre(Math.ceil(PLACES + PLACES_AN_SD * limit), 0, limit);
  const density = (to: number, from: number): number => {
    const z = to - from + drift;
    return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
  };
  const { solve } = householderQr(
    places.map((to, j) => places.map((from, i) => (i === j ? 1 : 0) - (weights[j] as number) * density(to, from))),
  );
  const fromZero = (above: readonly number[], first: number): number =>
    above.reduce((sum, value, j) => sum + (weights[j] as number) * density(places[j] as number, 0) * value, first);
  const passes = (from: number): number => normalUpperTail(limit + drift - from);
  const steps = fromZero(solve(places.map(() => 1)), 1);
  const chance = fromZero(solve(places.map(passes)), passes(0));
  return steps / Math.max(chance, LEAST_CHANCE);
}
