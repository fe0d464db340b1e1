import { requirePositive } from "./require-positive";

/** A variance and how many degrees of freedom it is worth. */
export interface WeighedVariance {
  /** In the unit of the values, squared; 0 or more. */
  readonly variance: number;
  /** 0 or more; 0: nothing is known. */
  readonly degrees: number;
}

/**
 * A measured variance drawn toward an expected one, each by its degrees of freedom.
 *
 * (d0 s0² + d s²) / (d0 + d): what is believed after measuring `measured` when before it the variance was believed to be
 * about `expected`, as if seen with d0 degrees of freedom (a scaled inverse chi-square belief). Nothing measured gives the
 * expected one back; much measured leaves the measured one.
 *
 * Bad input: negative numbers, NaN, infinity, or an expectation without degrees throws a RangeError. Assumes normal values.
 *
 * Source: Smyth, G.K. (2004), Statistical Applications in Genetics and Molecular Biology 3(1), article 3, section 4.
 */
export function shrunkenVariance(measured: WeighedVariance, expected: WeighedVariance): number {
  requirePositive(expected.degrees, "expected.degrees");
  for (const [name, value] of [
    ["measured.variance", measured.variance],
    ["measured.degrees", measured.degrees],
    ["expected.variance", expected.variance],
  ] as const)
    if (!(value >= 0 && Number.isFinite(value))) throw new RangeError(`${name} must be 0 or more, got ${value}`);
  const sum = expected.degrees * expected.variance + measured.degrees * measured.variance;
  return sum / (expected.degrees + measured.degrees);
}
