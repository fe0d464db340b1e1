import type { Edges } from "@/lib/domain/fundamental";
import type { Interval } from "@/lib/domain/track-verdict";
import { cholesky } from "@/lib/stats/cholesky";
import { covariance } from "@/lib/stats/covariance";
import { lookData } from "@/lib/stats/look-data";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { normalQuantile } from "@/lib/stats/normal-distribution";
import { normalMixture } from "@/lib/stats/normal-mixture";
import { readingStep } from "@/lib/stats/reading-step";
import type { Series } from "@/lib/stats/series";
import { shareInBand } from "@/lib/stats/share-in-band";
import { unitVariance } from "@/lib/stats/unit-variance";
import { whiten } from "@/lib/stats/whiten";
import type { Policy } from "./policy";

/** What can be said of a track before its first look: where it is, and how sure that is. */
export interface EarlyLevel {
  readonly level: Interval;
  readonly levelSd: number;
  readonly daySd: number;
  /** Sd of one swing, its reading error included. */
  readonly replicateSd: number;
  /** Sd of one session mean. */
  readonly unitSd: number;
  /** Share of swings inside a band at that level, measuring error taken out. */
  share(goal: Edges): Interval;
}

/**
 * Level of a track of one to three used sessions, all errors counted; null without a used session.
 *
 * Session means are weighted by their precision: day, camera and reader errors shared as the sessions share them. The
 * day-to-day sd is the noise model's mean where it was learned, else so many swing sds; the swing sd is that of the
 * pool, of the track's own swings, or the reader's. A starting belief about the level counts as one more mean.
 *
 * Assumes normal errors and a level that stays where it is.
 */
export function earlyLevel(series: Series, noise: NoiseModel, policy: Policy): EarlyLevel | null {
  // A spread of lately can't be told from one of ever yet.
  const { spread: _local, ...whole } = noise;
  const look = lookData(series, whole);
  const { count } = look;
  if (count === 0) return null;
  const replicateSd = look.replicateSd > 0 ? look.replicateSd : series.readingErrorSd;
  const daySd = typicalDaySd(noise, replicateSd, policy);
  const cell = {
    daySd,
    correlation: 0,
    fadesBy: "groups",
    errorPersistence: 0,
    weight: 1,
    logWeight: 0,
  } as const;
  const factor = cholesky(covariance(look, cell), count);
  const ones = whiten(factor, new Float64Array(count).fill(1), count);
  const values = whiten(factor, look.values, count);
  let precision = 0;
  let weighted = 0;
  for (let i = 0; i < count; i++) {
    precision += (ones[i] as number) ** 2;
    weighted += (ones[i] as number) * (values[i] as number);
  }
  if (look.start !== null) {
    precision += 1 / look.start.variance;
    weighted += look.start.mean / look.start.variance;
  }
  const mean = look.origin + weighted / precision;
  const sd = 1 / Math.sqrt(precision);
  const step = readingStep(look.groups.flatMap((group) => group.values));
  return {
    level: normalInterval(mean, sd),
    levelSd: sd,
    daySd,
    replicateSd,
    unitSd: Math.sqrt(unitVariance(look, daySd)),
    share: (goal) =>
      shareInBand(
        normalMixture(Float64Array.of(1), Float64Array.of(mean), Float64Array.of(sd * sd)),
        { values: [daySd], weights: [1] },
        { replicateSd, readingErrorSd: series.readingErrorSd, step },
        look.degreesOfFreedom,
        goal,
      ),
  };
}

/** Day-to-day sd before a track can tell its own: the noise model's mean, or so many swing sds without a learned one. */
export function typicalDaySd(noise: NoiseModel, replicateSd: number, policy: Policy): number {
  if (noise.kind === "start") return policy.dayFromSwing * replicateSd;
  return noise.cells.reduce((mean, cell) => mean + cell.weight * cell.daySd, 0);
}

/** Estimate and intervals of a normal belief. */
export function normalInterval(mean: number, sd: number): Interval {
  const reach80 = normalQuantile(0.9) * sd;
  const reach95 = normalQuantile(0.975) * sd;
  return {
    estimate: mean,
    low80: mean - reach80,
    high80: mean + reach80,
    low95: mean - reach95,
    high95: mean + reach95,
  };
}
