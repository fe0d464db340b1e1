import { mixtureQuantile } from "@/lib/stats/mixture-quantile";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { normalQuantile } from "@/lib/stats/normal-distribution";
import type { NormalMixture } from "@/lib/stats/normal-mixture";
import type { ReplicateGroup, Series } from "@/lib/stats/series";

/** Days between two sessions where the track has no two days yet. */
const USUAL_GAP = 7;

/** Median of one number or more. */
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[sorted.length >> 1] as number;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[(sorted.length >> 1) - 1] as number)) / 2;
}

/** What a track's further sessions will be like, as far as can be told now; levels and sds in the unit. */
export interface Future {
  /** Evenly spread quantiles of the belief about the level now, one a draw. */
  readonly levels: readonly number[];
  readonly daySd: number;
  readonly correlation: number;
  readonly replicateSd: number;
  /** Median camera sd of the used sessions. */
  readonly captureSd: number;
  readonly firstDay: number;
  /** Median of the days between used sessions, at least one. */
  readonly gap: number;
  readonly offsetLabel: string | null;
}

/** A belief about a level, and how much sessions and swings waver around it; sds in the unit. */
export interface LevelBelief {
  /** One normal belief, or one in several places: where it was, and where it seems to have gone. */
  readonly level: NormalMixture;
  readonly daySd: number;
  /** Sd of one swing, its reading error included. */
  readonly replicateSd: number;
}

/**
 * What further sessions of a track will be like: its level staying where it is believed to be, its usual noise, camera
 * and rhythm.
 *
 * @param series at least one used session
 */
export function futureOf(series: Series, belief: LevelBelief, noise: NoiseModel, draws: number): Future {
  const used = series.groups.filter((group) => group.used);
  const gaps = used.slice(1).map((group, i) => group.day - (used[i] as ReplicateGroup).day);
  const apart = gaps.filter((gap) => gap > 0);
  const gap = apart.length === 0 ? USUAL_GAP : Math.max(1, Math.round(median(apart)));
  return {
    levels: Array.from({ length: draws }, (_, draw) => mixtureQuantile(belief.level, (draw + 0.5) / draws)),
    daySd: belief.daySd,
    correlation: noise.cells.reduce((mean, cell) => mean + cell.weight * cell.correlation, 0),
    replicateSd: belief.replicateSd,
    captureSd: median(used.map((group) => group.sharedErrorSd)),
    firstDay: (series.groups.at(-1) as ReplicateGroup).day + gap,
    gap,
    offsetLabel: used.at(-1)?.offsetLabel ?? null,
  };
}

/** Evenly spread swings about 0 with sd 1: their mean is 0, so that a session's mean is drawn by itself. */
function swingPattern(count: number): readonly number[] {
  const scores = Array.from({ length: count }, (_, i) => normalQuantile((i + 0.5) / count));
  const sd = Math.sqrt(scores.reduce((sum, score) => sum + score * score, 0) / Math.max(1, count - 1));
  return scores.map((score) => score / (sd || 1));
}

const patterns = new Map<number, readonly number[]>();

function swingsAbout(mean: number, sd: number, count: number): number[] {
  const pattern = patterns.get(count) ?? swingPattern(count);
  patterns.set(count, pattern);
  return pattern.map((score) => mean + sd * score);
}

/**
 * A track with one drawn future of a plan appended.
 *
 * @param draw which of the future's levels
 * @param point standard normal numbers: day, camera and swings of each session in turn
 */
export function drawFuture(
  series: Series,
  future: Future,
  plan: { readonly sessions: number; readonly swingsEach: number; readonly care: number },
  draw: number,
  point: Float64Array,
): Series {
  const level = future.levels[draw] as number;
  const captureSd = future.captureSd * plan.care;
  const meanSd = future.replicateSd / Math.sqrt(plan.swingsEach);
  const kept = Math.sqrt(1 - future.correlation ** 2);
  const groups: ReplicateGroup[] = [];
  let state = 0;
  for (let nth = 0; nth < plan.sessions; nth++) {
    const [day, camera, swings] = [0, 1, 2].map((part) => point[3 * nth + part] as number) as [number, number, number];
    state = nth === 0 ? day : future.correlation * state + kept * day;
    const mean = level + future.daySd * state + captureSd * camera + meanSd * swings;
    groups.push({
      day: future.firstDay + nth * future.gap,
      values: swingsAbout(mean, future.replicateSd, plan.swingsEach),
      sharedErrorSd: captureSd,
      sharedErrorLabel: null,
      offsetLabel: future.offsetLabel,
      used: true,
    });
  }
  return { ...series, groups: [...series.groups, ...groups] };
}
