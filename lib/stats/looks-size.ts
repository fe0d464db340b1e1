import { crossingChances } from "./crossing-chances";
import { normalQuantile } from "./normal-distribution";
import { spendingBounds } from "./spending-bounds";
import { type TTestSize, tTestSize } from "./t-test-size";

/** A comparison of two equal arms that is looked at several times. */
export interface LooksDesign {
  /** The difference worth finding in standard deviations of one value, above 0. */
  readonly effect: number;
  /** Looks at equal steps of the values, from 1. */
  readonly looks: number;
  readonly level: number;
  readonly power: number;
}

const HALVINGS = 40;

/**
 * How many values of each of two arms a comparison takes that is looked at several times and stops once something is proved.
 *
 * `design`: see `LooksDesign`. Result: the number of `tTestSize` times what the looks cost, the ratio of squared drifts with
 * which a normal test with and without looks has the power. Out-of-reach as there. Bad input: looks that are no whole number
 * from 1, an effect of 0 or below, and what `tTestSize` refuses throws a RangeError. Assumes normal values; a test by
 * re-randomisation comes near it from about 10 of each arm on.
 *
 * Source: Jennison, C. & Turnbull, B.W. (2000), Group Sequential Methods, 7.2 (inflation factors), from memory.
 */
export function looksSize({ effect, looks, level, power }: LooksDesign): TTestSize {
  if (!Number.isInteger(looks) || looks < 1) throw new RangeError(`looks must be a whole number from 1, got ${looks}`);
  if (!(effect > 0)) throw new RangeError(`effect must be above 0, got ${effect}`);
  const once = tTestSize({ design: "two-sample", sides: "two-sided", effect, level }, power);
  if (once.kind !== "ok" || looks === 1) return once;
  const fractions = Array.from({ length: looks }, (_, look) => (look + 1) / looks);
  const bounds = spendingBounds(fractions, level);
  const has = (drift: number): boolean =>
    crossingChances(fractions, bounds, drift).reduce((sum, { up }) => sum + up, 0) >= power;
  const single = normalQuantile(power) - normalQuantile(level / 2);
  let [low, high] = [0, 2 * Math.max(single, 1)];
  for (let round = 0; round < HALVINGS; round++) {
    const middle = (low + high) / 2;
    if (has(middle)) high = middle;
    else low = middle;
  }
  const exact = once.exact * (high / single) ** 2;
  return { kind: "ok", exact, whole: Math.ceil(exact) };
}
