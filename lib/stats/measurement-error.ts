import { chiSquareQuantile } from "./chi-square-distribution";
import { compensatedDot } from "./compensated-dot";
import { compensatedSum } from "./compensated-sum";
import { minimalDetectableChange } from "./minimal-detectable-change";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { requireProbability } from "./require-probability";

/** How far one reading of a thing strays from the mean of many readings of it, in the unit of the values. */
export interface MeasurementError {
  /** Standard error of measurement: the sd within things, pooled. */
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
  readonly degrees: number;
  /** Difference of two readings of one thing that 95 of 100 stay below. */
  readonly detectableChange95: number;
}

/**
 * Standard error of measurement from things that were read twice or more.
 *
 * `readings`: one list a thing, in one unit, any order, any sizes; a thing read once adds nothing. `confidence`: 0.95 for 95
 * of 100, of the interval (chi-square). No thing read twice: too-few, counting the readings of the thing most often read (2
 * needed). All re-readings equal: too-few, counting things with two different readings (1 needed): an error of 0 can't be
 * told from rounding. Bad input: NaN, infinity or a confidence outside 0 to 1 throws a RangeError. Assumes normal,
 * independent reading errors of one size, and no drift from one reading to the next.
 *
 * Source: Bland, J.M. & Altman, D.G. (1986), Lancet i, 307-310; (1996), BMJ 312, 1654.
 */
export function measurementError(
  readings: readonly (readonly number[])[],
  confidence: number,
): Outcome<MeasurementError> {
  requireProbability(confidence, "confidence");
  readings.forEach((list, index) => {
    requireFinite(list, `readings[${index}]`);
  });
  const most = readings.reduce((length, list) => Math.max(length, list.length), 0);
  if (most < 2) return tooFew(most, 2);
  if (readings.every((list) => list.every((value) => value === list[0]))) return tooFew(0, 1);
  const deviations = readings.flatMap((list) => {
    const shifted = list.map((value) => value - (list[0] as number));
    const mean = compensatedSum(shifted) / list.length;
    return shifted.map((value) => value - mean);
  });
  const degrees = readings.reduce((sum, list) => sum + Math.max(0, list.length - 1), 0);
  const squares = compensatedDot(deviations, deviations);
  const standardError = Math.sqrt(squares / degrees);
  const tail = (1 - confidence) / 2;
  return ok({
    standardError,
    low: Math.sqrt(squares / chiSquareQuantile(1 - tail, degrees)),
    high: Math.sqrt(squares / chiSquareQuantile(tail, degrees)),
    degrees,
    detectableChange95: minimalDetectableChange(standardError, 0.95),
  });
}
