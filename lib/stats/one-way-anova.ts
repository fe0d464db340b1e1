import { compensatedDot } from "./compensated-dot";
import { compensatedSum } from "./compensated-sum";
import { fUpperTail } from "./f-distribution";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";

/** The parts that a spread inside the groups is needed for. */
export interface AnovaRatios {
  /** Mean square between over mean square within. */
  readonly f: number;
  /** Chance of an F at least as large when all groups share one mean. */
  readonly p: number;
  /** Share of the whole sum of squares that lies between groups, 0 to 1. */
  readonly rSquared: number;
  /** Reliability of one value, ICC(1,1); may be below 0. */
  readonly reliabilityOfOne: number;
  /** Reliability of a mean of `effectiveSize` values, 1 - 1/F; too-few counts groups' distinct means, 2 needed. */
  readonly reliabilityOfMean: Outcome<number>;
}

/** A one-way analysis of variance; squares are in the unit of the values, squared. */
export interface OneWayAnova {
  readonly degreesBetween: number;
  readonly degreesWithin: number;
  readonly squaresBetween: number;
  readonly squaresWithin: number;
  readonly meanSquareBetween: number;
  readonly meanSquareWithin: number;
  /** Square root of the mean square within, in the unit. */
  readonly residualSd: number;
  /** Values a group, weighted so that unequal groups count rightly; their number when all are equal. */
  readonly effectiveSize: number;
  /** Variance of the groups' true means by the method of moments; below 0 when F is below 1. */
  readonly betweenVariance: number;
  readonly grandMean: number;
  /** Too-few counts groups that hold two different values, 1 needed. */
  readonly ratios: Outcome<AnovaRatios>;
}

/**
 * One-way analysis of variance, with the variance components of groups drawn at random.
 *
 * `groups`: two or more lists of values in one unit, any sizes from 1, in any order. Fewer than two groups:
 * too-few, counting groups. No more values than groups: too-few, counting values. Bad input: an empty group, NaN or
 * infinity throws a RangeError. Assumes one within-group variance; the p also assumes normal, independent errors.
 * Works on differences from the first value, so a small spread on a large level keeps its digits.
 *
 * Source: definitions of the NIST Statistical Reference Datasets, analysis of variance; components and
 * ICC(1,1), ICC(1,k) after Shrout, P.E. & Fleiss, J.L. (1979), Psychological Bulletin 86, 420-428.
 */
export function oneWayAnova(groups: readonly (readonly number[])[]): Outcome<OneWayAnova> {
  groups.forEach((group, index) => {
    if (group.length === 0) throw new RangeError(`groups[${index}] must hold at least one value, got none`);
    requireFinite(group, `groups[${index}]`);
  });
  if (groups.length < 2) return tooFew(groups.length, 2);
  const all = groups.flat();
  const count = all.length;
  if (count <= groups.length) return tooFew(count, groups.length + 1);

  const anchor = all[0] as number;
  const shifted = groups.map((group) => group.map((value) => value - anchor));
  const grand = compensatedSum(shifted.flat()) / count;
  const means = shifted.map((group) => compensatedSum(group) / group.length);
  const within = shifted.flatMap((group, index) => group.map((value) => value - (means[index] as number)));
  const between = means.map((mean) => mean - grand);
  const sizes = groups.map((group) => group.length);

  const degreesBetween = groups.length - 1;
  const degreesWithin = count - groups.length;
  const squaresWithin = compensatedDot(within, within);
  const squaresBetween = compensatedSum(between.map((gap, index) => (sizes[index] as number) * gap * gap));
  const meanSquareBetween = squaresBetween / degreesBetween;
  const meanSquareWithin = squaresWithin / degreesWithin;
  const effectiveSize = (count - compensatedDot(sizes, sizes) / count) / degreesBetween;
  const betweenVariance = (meanSquareBetween - meanSquareWithin) / effectiveSize;
  const f = meanSquareBetween / meanSquareWithin;
  const spread = groups.some((group) => group.some((value) => value !== group[0]));
  return ok({
    degreesBetween,
    degreesWithin,
    squaresBetween,
    squaresWithin,
    meanSquareBetween,
    meanSquareWithin,
    residualSd: Math.sqrt(meanSquareWithin),
    effectiveSize,
    betweenVariance,
    grandMean: compensatedSum(all) / count,
    ratios: spread
      ? ok({
          f,
          p: fUpperTail(f, degreesBetween, degreesWithin),
          rSquared: squaresBetween / (squaresBetween + squaresWithin),
          reliabilityOfOne: betweenVariance / (betweenVariance + meanSquareWithin),
          reliabilityOfMean: f > 0 ? ok(1 - 1 / f) : tooFew(1, 2),
        })
      : tooFew(0, 1),
  });
}
