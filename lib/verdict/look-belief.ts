import type { Direction, Interval } from "@/lib/domain/track-verdict";
import { FIRST_LOOK } from "@/lib/stats/evidence";
import { type LookData, lookData } from "@/lib/stats/look-data";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { normalQuantile } from "@/lib/stats/normal-distribution";
import { type NormalMixture, normalMixture } from "@/lib/stats/normal-mixture";
import { oneWayChange } from "@/lib/stats/one-way-change";
import { type PosteriorComponents, posteriorComponents } from "@/lib/stats/posterior-components";
import { type PosteriorWeights, posteriorWeights } from "@/lib/stats/posterior-weights";
import type { Series } from "@/lib/stats/series";
import type { LevelBelief } from "./drawn-future";

/** What is believed of the track now; levels and sds in the unit. */
export interface SettleBelief {
  readonly level: Interval;
  readonly daySd: number;
  /** Sd of one swing, its reading error included. */
  readonly replicateSd: number;
}

/** Beliefs about where a track is now, from which its further sessions can be drawn. */
export interface LookBelief {
  /** All that is believed. */
  whole(): LevelBelief;
  /** Given that nothing lasting happened. */
  unchanged(): LevelBelief;
  /**
   * Given that a lasting change one way happened, of at least some size in the unit; its mean size (above 0 for up), and
   * the share of all changes that is so; null before the first look, or where none is conceivable.
   */
  changed(
    direction: Direction,
    least: number,
  ): (LevelBelief & { readonly size: number; readonly share: number }) | null;
}

/**
 * Opens the beliefs of a track's latest look; each is worked out when asked.
 *
 * From the first look on they are the engine's own mixture. Before that the level is one normal belief, as if nothing
 * had changed.
 *
 * @param series at least one used session
 */
export function lookBelief(series: Series, noise: NoiseModel, belief: SettleBelief): LookBelief {
  const look = lookData(series, noise);
  const { daySd, replicateSd } = belief;
  if (look.count < FIRST_LOOK) {
    const sd = (belief.level.high95 - belief.level.low95) / (2 * normalQuantile(0.975));
    const level = normalMixture(
      Float64Array.of(1),
      Float64Array.of(belief.level.estimate),
      Float64Array.of(Math.max(sd * sd, Number.MIN_VALUE)),
    );
    const flat = { level, daySd, replicateSd };
    return { whole: () => flat, unchanged: () => flat, changed: () => null };
  }
  const parts = posteriorComponents(look);
  const weights = posteriorWeights(look, parts);
  return {
    whole: () => ({ level: levelOf(look, parts, parts.weights), daySd, replicateSd }),
    unchanged: () => {
      const still = unchangedWeights(parts, weights);
      return { level: levelOf(look, parts, still), daySd: meanDaySd(look, parts, still), replicateSd };
    },
    changed: (direction, least) => {
      const change = oneWayChange(look, parts, weights, direction, least);
      return change === null ? null : { ...change, replicateSd };
    },
  };
}

function levelOf(look: LookData, parts: PosteriorComponents, weights: Float64Array): NormalMixture {
  const level = normalMixture(weights, parts.levelMeans, parts.levelVariances);
  return { ...level, means: level.means.map((mean) => mean + look.origin) };
}

function unchangedWeights(parts: PosteriorComponents, weights: PosteriorWeights): Float64Array {
  return parts.weights.map((weight, i) => ((weights.changed[i] as number) > 0 ? 0 : weight));
}

function meanDaySd(look: LookData, parts: PosteriorComponents, weights: Float64Array): number {
  let [total, sum] = [0, 0];
  weights.forEach((weight, i) => {
    total += weight;
    sum += weight * (look.cells[Math.floor(i / parts.stride)] as { daySd: number }).daySd;
  });
  return sum / total;
}
