import { ewmaRunLength } from "./ewma-run-length";

/** Longest mean run length in control that a limit is looked for. */
const LONGEST = 1e6;

/** Halvings of the bracket: 12 digits. */
const BISECTIONS = 45;

/**
 * The limit of a two-sided EWMA chart that gives a wanted mean run length in control.
 *
 * `weight`: of the newest value, above 0 to 1; `runLength`: mean number of values between false alarms, above 1, at most
 * a million. Result in sds of the settled average, about 9 digits. Bad input throws a RangeError. Assumptions as
 * `ewmaRunLength`; found by halving a bracket, because the run length grows with the limit.
 *
 * Source: Crowder, S.V. (1989), Journal of Quality Technology 21, 155-162 (the design); bisection.
 */
export function designEwma(weight: number, runLength: number): number {
  if (!(runLength > 1 && runLength <= LONGEST))
    throw new RangeError(`runLength must lie above 1, to ${LONGEST}, got ${runLength}`);
  let high = 0.5;
  while (ewmaRunLength(weight, high, 0) < runLength) high += 0.5;
  let low = 0;
  for (let round = 0; round < BISECTIONS; round++) {
    const middle = (low + high) / 2;
    if (ewmaRunLength(weight, middle, 0) < runLength) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
