import { type CusumSides, cusumRunLength } from "./cusum-run-length";
import { normalUpperTail } from "./normal-distribution";

/** A limit, or that even a limit of 0 gives longer runs than wanted. */
export type CusumDesign =
  | {
      readonly kind: "ok";
      /** In sds of one value. */
      readonly limit: number;
    }
  | {
      readonly kind: "out-of-reach";
      /** Mean run length in control with a limit of 0. */
      readonly least: number;
    };

/** Longest mean run length in control that a limit is looked for. */
const LONGEST = 1e6;

/** Halvings of the bracket: 12 digits. */
const BISECTIONS = 45;

/**
 * The limit of a cusum chart that gives a wanted mean run length in control.
 *
 * `slack`: in sds of one value, 0 or more; `runLength`: mean number of values between false alarms, above 1, at most a
 * million; `sides`: as in `cusumRunLength`. Result about 9 digits; a run length below that of a limit of 0:
 * out-of-reach. Bad input throws a RangeError. Assumptions as `cusumRunLength`; found by halving a bracket,
 * because the run length grows with the limit.
 *
 * Source: Hawkins, D.M. & Olwell, D.H. (1998), Cumulative Sum Charts and Charting for Quality Improvement, 3 (the
 * design); bisection.
 */
export function designCusum(slack: number, runLength: number, sides: CusumSides): CusumDesign {
  if (!(slack >= 0 && Number.isFinite(slack))) throw new RangeError(`slack must be 0 or more, got ${slack}`);
  if (!(runLength > 1 && runLength <= LONGEST))
    throw new RangeError(`runLength must lie above 1, to ${LONGEST}, got ${runLength}`);
  const least = 1 / ((sides === "upper" ? 1 : 2) * normalUpperTail(slack));
  if (runLength <= least) return { kind: "out-of-reach", least };
  const reaches = (limit: number): boolean => cusumRunLength(slack, limit, 0, sides) >= runLength;
  let high = 1;
  while (!reaches(high)) high *= 2;
  let low = 0;
  for (let round = 0; round < BISECTIONS; round++) {
    const middle = (low + high) / 2;
    if (reaches(middle)) high = middle;
    else low = middle;
  }
  return { kind: "ok", limit: (low + high) / 2 };
}
