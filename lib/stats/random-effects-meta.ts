import { betweenStudyVariance, type VarianceEstimator } from "./between-study-variance";
import { chiSquareUpperTail } from "./chi-square-distribution";
import { compensatedSum } from "./compensated-sum";
import { normalCdf, normalQuantile } from "./normal-distribution";
import { type Outcome, ok } from "./outcome";
import { requireProbability } from "./require-probability";
import { tCdf, tQuantile } from "./t-distribution";

/**
 * How the mean's interval is made: normal with the known weights; Hartung and Knapp's, by t with k - 1 degrees and a scale
 * from the effects themselves; or theirs with that scale never below 1, so that it can't be narrower by luck.
 */
export type MetaInterval = "normal" | "hartung-knapp" | "hartung-knapp-floored";

/** The choices of a random-effects meta-analysis. */
export interface MetaChoices {
  readonly estimator: VarianceEstimator;
  readonly interval: MetaInterval;
  /** 0.95 for 95 of 100. */
  readonly confidence: number;
}

/** A mean of studies' effects; effect and errors in their unit. */
export interface RandomEffectsMeta {
  readonly studies: number;
  readonly estimate: number;
  readonly standardError: number;
  /** Standard error by the known weights, whatever the interval. */
  readonly weightedError: number;
  readonly low: number;
  readonly high: number;
  /** Two-sided chance of an estimate as far from 0 when the mean effect is 0. */
  readonly p: number;
  /** Variance of true effects between studies, in the unit squared. */
  readonly betweenVariance: number;
  /** Cochran's Q: weighted squares about the common mean, and its chance when all effects are one. */
  readonly q: number;
  readonly qP: number;
  /** I2: share of the variance of a typical study that lies between studies, 0 to below 1. */
  readonly betweenShare: number;
  /** Each study's share of the mean, in their order; sums to 1. */
  readonly weights: readonly number[];
}

/**
 * Mean effect of studies whose true effects differ, with the spread of those effects.
 *
 * `effects`: one a study, in one unit; `variances`: of their errors, known, in the unit squared, same order; `choices`:
 * see its fields. Fewer than two studies: too-few, counting studies. Bad input: unequal lengths, NaN, infinity, a
 * variance that isn't above 0 or a confidence outside 0 to 1 throws a RangeError. Assumes independent studies with normal
 * true effects and errors of the stated variances.
 *
 * Source: DerSimonian, R. & Laird, N. (1986), Controlled Clinical Trials 7, 177-188; Hartung, J. & Knapp, G. (2001),
 * Statistics in Medicine 20, 3875-3889; floor after Röver, C., Knapp, G. & Friede, T. (2015), BMC Medical Research
 * Methodology 15, 99; I2 after Higgins, J.P.T. & Thompson, S.G. (2002), Statistics in Medicine 21, 1539-1558.
 */
export function randomEffectsMeta(
  effects: readonly number[],
  variances: readonly number[],
  choices: MetaChoices,
): Outcome<RandomEffectsMeta> {
  requireProbability(choices.confidence, "confidence");
  const between = betweenStudyVariance(effects, variances, choices.estimator);
  if (between.kind !== "ok") return between;
  const studies = effects.length;
  const degrees = studies - 1;
  const own = pooled(effects, variances, 0);
  const { estimate, total, weights, squares } = pooled(effects, variances, between.value);

  const weightedError = Math.sqrt(1 / total);
  const scale = choices.interval === "normal" ? 1 : squares / degrees;
  const factor = choices.interval === "hartung-knapp-floored" ? Math.max(1, scale) : scale;
  const standardError = weightedError * Math.sqrt(factor);
  const tail = (1 - choices.confidence) / 2;
  const normal = choices.interval === "normal";
  const reach = -(normal ? normalQuantile(tail) : tQuantile(tail, degrees)) * standardError;
  const z = Math.abs(estimate) / standardError;
  const beyond = (far: number): number => 2 * (normal ? normalCdf(-far) : tCdf(-far, degrees));
  const typical = degrees / (own.total - compensatedSum(own.weights.map((weight) => weight * weight)) / own.total);
  return ok({
    studies,
    estimate,
    standardError,
    weightedError,
    low: estimate - reach,
    high: estimate + reach,
    p: standardError > 0 ? beyond(z) : estimate === 0 ? 1 : 0,
    betweenVariance: between.value,
    q: own.squares,
    qP: chiSquareUpperTail(own.squares, degrees),
    betweenShare: between.value / (between.value + typical),
    weights: weights.map((weight) => weight / total),
  });
}

/** The weighted mean when effects vary between studies by a variance, its weights and its weighted squares. */
function pooled(effects: readonly number[], variances: readonly number[], between: number) {
  const weights = variances.map((variance) => 1 / (variance + between));
  const total = compensatedSum(weights);
  const estimate = compensatedSum(weights.map((weight, i) => weight * (effects[i] as number))) / total;
  const squares = compensatedSum(weights.map((weight, i) => weight * ((effects[i] as number) - estimate) ** 2));
  return { estimate, total, weights, squares };
}
