import { fillLevelSums, type LevelSums } from "./cell-sums";
import { cholesky } from "./cholesky";
import { covariance } from "./covariance";
import { dotProduct } from "./dot-product";
import type { LookData } from "./look-data";
import type { NuisanceCell } from "./nuisance-grid";
import { type Outcome, ok, tooFew } from "./outcome";
import { requirePositive } from "./require-positive";
import { requireProbability } from "./require-probability";
import { unitVariance } from "./unit-variance";
import { whiten } from "./whiten";

/** What an approach goes by: the days, or the groups as they come. */
export type ApproachClock = "days" | "groups";

/** What is believed of an approach before the values are seen. */
export interface ApproachBelief {
  /** Above 0, in usual gaps between groups; believed alike, so evenly spread in the logarithm when they are. */
  readonly scales: readonly number[];
  /** Share of belief, between 0 and 1, on a step: all of the gain by the next group. */
  readonly stepShare: number;
  /** Sd of the whole gain, in sds of one group mean; its mean is 0. */
  readonly gainSd: number;
}

/** One conceivable approach: level = old level + gain (1 - exp(-(position - start) / scale)) after its start. */
export interface ApproachNode {
  /** Share of belief; over all nodes they sum to 1. */
  readonly weight: number;
  readonly clock: ApproachClock;
  /** From the start of the approach to the last group, in usual gaps. */
  readonly since: number;
  /** In usual gaps; 0: a step. */
  readonly scale: number;
  /**
   * The level once a share h of the gain is reached is normal, in the unit: mean `centreLevel` + (h - `centre`) `gain`,
   * variance `centreVariance` + (h - `centre`)^2 `gainVariance`.
   */
  readonly centre: number;
  readonly centreLevel: number;
  readonly centreVariance: number;
  readonly gain: number;
  readonly gainVariance: number;
}

/** All conceivable approaches of a look. */
export interface Approach {
  readonly nodes: readonly ApproachNode[];
  /** Mean days from group to group, at least 1 over all. */
  readonly gapDays: number;
}

/** Two groups of the old level, and two more that could tell a curve from a step. */
const FEWEST = 4;

/** Nodes below this share of the likeliest one are left out; all of them together hold next to nothing. */
const NEGLIGIBLE = 1e-5;

/**
 * All exponential approaches from an old level to a new one that the values allow, each with its share of belief.
 *
 * In words: the level lay flat, then neared another one, fast at first and slower after. Where it began, how fast it goes
 * and whether by days or by groups stand on a grid: the start after any group but the last two, the step and the scales of
 * `belief` for each clock. At each node old level and gain are integrated out exactly: the old level with a flat prior (or
 * `look.start`), the gain normal about 0. Noise is the look's own: every nuisance cell with its covariance and its weight.
 *
 * `look`: one value a used group, in date order, in the unit. Too few: fewer than four used groups, counted in used
 * groups. Throws a RangeError on an empty list of scales, a scale or sd that isn't above 0, or a share that isn't between 0 and 1.
 * Assumes one approach and no way back. Deterministic.
 *
 * Source: Heathcote, Brown & Mewhort (2000), Psychonomic Bulletin & Review 7, 185-207 (single learners near a level
 * exponentially); the integrals are the normal linear model's, as in Kass & Raftery (1995), JASA 90.
 */
export function exponentialApproach(look: LookData, belief: ApproachBelief): Outcome<Approach> {
  const { count, groups } = look;
  if (belief.scales.length === 0) throw new RangeError("an approach needs a scale");
  for (const scale of belief.scales) requirePositive(scale, "scale");
  requirePositive(belief.gainSd, "gainSd");
  requireProbability(belief.stepShare, "stepShare");
  if (count < FEWEST) return tooFew(count, FEWEST);
  const days = groups.map((group) => group.day - (groups[0] as { day: number }).day);
  const gapDays = Math.max(1, days[count - 1] as number) / (count - 1);
  const shapes = [
    ...stepShapes(count, belief.stepShare),
    ...curveShapes(
      "groups",
      days.map((_, i) => i),
      belief,
    ),
    ...curveShapes(
      "days",
      days.map((day) => day / gapDays),
      belief,
    ),
  ];
  const found = look.cells.flatMap((cell) => cellNodes(look, cell, shapes, belief.gainSd));
  return ok({ nodes: weighed(found), gapDays });
}

/** A grid point before the values are seen. */
interface Shape {
  readonly clock: ApproachClock;
  readonly since: number;
  readonly scale: number;
  readonly logPrior: number;
  /** Share of the gain reached at each group. */
  readonly column: Float64Array;
}

/** A node, its weight still a logarithm. */
type Unweighed = Omit<ApproachNode, "weight"> & { readonly logWeight: number };

function stepShapes(count: number, share: number): readonly Shape[] {
  return Array.from({ length: count - 2 }, (_, start) => ({
    clock: "groups",
    since: count - 1 - start,
    scale: 0,
    logPrior: Math.log(share / (count - 2)),
    column: Float64Array.from({ length: count }, (_, i) => (i > start ? 1 : 0)),
  }));
}

/** Half of what isn't a step goes by either clock. */
function curveShapes(clock: ApproachClock, positions: readonly number[], belief: ApproachBelief): readonly Shape[] {
  const { scales, stepShare } = belief;
  const count = positions.length;
  const logPrior = Math.log((1 - stepShare) / (2 * scales.length * (count - 2)));
  return scales.flatMap((scale) =>
    positions.slice(0, -2).map((from) => ({
      clock,
      since: (positions[count - 1] as number) - from,
      scale,
      logPrior,
      column: Float64Array.from(positions, (at) => (at <= from ? 0 : -Math.expm1((from - at) / scale))),
    })),
  );
}

function cellNodes(look: LookData, cell: NuisanceCell, shapes: readonly Shape[], gainSd: number): Unweighed[] {
  const { count, values } = look;
  const factor = cholesky(covariance(look, cell), count);
  const whiteY = whiten(factor, values, count);
  const white1 = whiten(factor, new Float64Array(count).fill(1), count);
  const product = (a: Float64Array, b: Float64Array): number => dotProduct(a, 0, b, 0, count);
  let logDeterminant = 0;
  for (let i = 0; i < count; i++) logDeterminant += 2 * Math.log(factor[i * count + i] as number);
  const sums: LevelSums = { logDeterminant: 0, oneOne: 0, oneY: 0, yy: 0 };
  fillLevelSums(sums, look.start, {
    logDeterminant,
    oneOne: product(white1, white1),
    oneY: product(white1, whiteY),
    yy: product(whiteY, whiteY),
  });
  const centreVariance = 1 / sums.oneOne;
  const flat = sums.oneY * centreVariance;
  const logFlat = cell.logWeight - 0.5 * (sums.logDeterminant + Math.log(sums.oneOne) + sums.yy - sums.oneY * flat);
  const gainVariance = gainSd * gainSd * unitVariance(look, cell.daySd);
  return shapes.map((shape) => {
    const white = whiten(factor, shape.column, count);
    const x1 = product(white, white1);
    const information = Math.max(0, product(white, white) - x1 * x1 * centreVariance);
    const score = product(white, whiteY) - x1 * flat;
    const precision = information + 1 / gainVariance;
    return {
      logWeight:
        logFlat + shape.logPrior - 0.5 * Math.log1p(gainVariance * information) + (0.5 * score * score) / precision,
      clock: shape.clock,
      since: shape.since,
      scale: shape.scale,
      centre: x1 * centreVariance,
      centreLevel: flat + look.origin,
      centreVariance,
      gain: score / precision,
      gainVariance: 1 / precision,
    };
  });
}

function weighed(found: readonly Unweighed[]): readonly ApproachNode[] {
  const peak = found.reduce((most, { logWeight }) => Math.max(most, logWeight), Number.NEGATIVE_INFINITY);
  const kept = found
    .map(({ logWeight, ...node }) => ({ weight: Math.exp(logWeight - peak), ...node }))
    .filter(({ weight }) => weight > NEGLIGIBLE);
  const total = kept.reduce((sum, { weight }) => sum + weight, 0);
  return kept.map((node) => ({ ...node, weight: node.weight / total }));
}
