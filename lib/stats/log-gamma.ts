/** Coefficients B(2k) / (2k (2k - 1)) of Stirling's series, k = 1 to 8. */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156, -3617 / 122400];

/** From here on eight terms of the series leave an error below 1e-17. */
const SERIES_FROM = 15;

/**
 * Natural logarithm of the gamma function; for a whole number k, log of (k - 1) factorial.
 *
 * `x`: one number above 0, no unit. Good to about 15 digits, or to 1e-14 absolute near the zeros at 1 and 2.
 * Bad input: 0, a negative number or NaN throws a RangeError.
 *
 * Source: Stirling's series with the recurrence; Abramowitz, M. & Stegun, I.A. (1964), Handbook of
 * Mathematical Functions, 6.1.15 and 6.1.40.
 */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`logGamma needs a number above 0, got ${x}`);
  let product = 1;
  let z = x;
  while (z < SERIES_FROM) {
    product *= z;
    z += 1;
  }
  const inverse = 1 / z;
  const square = inverse * inverse;
  const series = STIRLING.reduceRight((sum, term) => sum * square + term, 0) * inverse;
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series - Math.log(product);
}
