import { kendallNull } from "./kendall-null";
import { normalUpperTail } from "./normal-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { tieSizes } from "./tie-sizes";

/** Whether values go up or down with time, by pairs. */
export interface MannKendall {
  readonly count: number;
  /** Pairs that rise with time less pairs that fall. */
  readonly s: number;
  /** Variance of S when nothing changes, ties allowed for. */
  readonly variance: number;
  /** S in standard deviations, drawn in by one (continuity); 0 where S is 0. */
  readonly z: number;
  /** Two-sided p from z. */
  readonly normalP: number;
  /** Two-sided p: counted exactly up to `EXACT_UP_TO` points with ties in one variable at most, otherwise from z. */
  readonly p: { readonly kind: "exact" | "normal"; readonly value: number };
  /** S over all pairs, -1 to 1. */
  readonly tauA: number;
  /** S over the pairs not tied in either; too-few counts different values, 2 needed. */
  readonly tauB: Outcome<number>;
}

/** Longest series whose p is counted exactly; beyond it the normal p agrees to about 1e-3 of itself in the bulk. */
export const EXACT_UP_TO = 50;

/**
 * Mann-Kendall test of a monotone trend.
 *
 * `times` and `values`: equal lengths, point by point, any order and spacing, any units; ties are allowed in both.
 * Fewer than three points, or fewer than two different times: too-few, counting points or times. Values all equal are an
 * answer: S 0, p 1. Bad input: unequal lengths, NaN or infinity throws a RangeError. Assumes independent values: serial
 * dependence makes the p too small.
 *
 * Source: Mann, H.B. (1945), Econometrica 13, 245-259; Kendall, M.G. (1970), Rank Correlation Methods, ch. 4-5;
 * Gilbert, R.O. (1987), Statistical Methods for Environmental Pollution Monitoring, ch. 16.
 */
export function mannKendall(times: readonly number[], values: readonly number[]): Outcome<MannKendall> {
  requireFinite(times, "times");
  requireFinite(values, "values");
  if (times.length !== values.length)
    throw new RangeError(`times must have ${values.length} values, got ${times.length}`);
  const count = values.length;
  if (count < 3) return tooFew(count, 3);
  const timeTies = tieSizes(times);
  const valueTies = tieSizes(values);
  if (timeTies.length < 2) return tooFew(timeTies.length, 2);

  let s = 0;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      s +=
        Math.sign((values[j] as number) - (values[i] as number)) *
        Math.sign((times[j] as number) - (times[i] as number));
    }
  }
  const variance = valueTies.length < 2 ? 0 : varianceOfS(count, timeTies, valueTies);
  const z = s === 0 ? 0 : (s - Math.sign(s)) / Math.sqrt(variance);
  const normalP = Math.min(1, 2 * normalUpperTail(Math.abs(z)));
  const allPairs = (count * (count - 1)) / 2;
  const open = (allPairs - tiedPairs(timeTies)) * (allPairs - tiedPairs(valueTies));
  const oneTied = timeTies.length === count ? valueTies : valueTies.length === count ? timeTies : null;
  return ok({
    count,
    s,
    variance,
    z,
    normalP,
    p:
      oneTied !== null && count <= EXACT_UP_TO
        ? { kind: "exact", value: exactP(s, oneTied) }
        : { kind: "normal", value: normalP },
    tauA: s / allPairs,
    tauB: valueTies.length < 2 ? tooFew(valueTies.length, 2) : ok(s / Math.sqrt(open)),
  });
}

function tiedPairs(sizes: readonly number[]): number {
  return sizes.reduce((sum, size) => sum + (size * (size - 1)) / 2, 0);
}

/** Kendall's variance with ties in both variables (1970, ch. 4). */
function varianceOfS(count: number, timeTies: readonly number[], valueTies: readonly number[]): number {
  const total = (sizes: readonly number[], term: (k: number) => number) => sizes.reduce((sum, k) => sum + term(k), 0);
  const full = (k: number) => k * (k - 1) * (2 * k + 5);
  const two = (k: number) => k * (k - 1);
  const three = (k: number) => k * (k - 1) * (k - 2);
  return (
    (full(count) - total(timeTies, full) - total(valueTies, full)) / 18 +
    (total(timeTies, two) * total(valueTies, two)) / (2 * two(count)) +
    (total(timeTies, three) * total(valueTies, three)) / (9 * three(count))
  );
}

/** Chance of an |S| at least as large, every order equally likely. */
function exactP(s: number, sizes: readonly number[]): number {
  const { pairs, chances } = kendallNull(sizes);
  return chances.reduce((sum, chance, d) => (Math.abs(pairs - 2 * d) >= Math.abs(s) ? sum + chance : sum), 0);
}
