import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { NoiseModel } from "@/lib/stats/noise-model";
import type { Series } from "@/lib/stats/series";
import { earlyLevel } from "./early-level";
import { judgedSeries } from "./judged-series";
import { lookBelief } from "./look-belief";
import { type Futures, futuresOf, planningOf } from "./plan-futures";
import type { Policy } from "./policy";
import { proves } from "./proves";

/** What so many further films would prove. */
export interface Provable {
  /** In the unit: a lasting step of this size is proved by then in four futures of five; null: none is, however large. */
  readonly size: number | null;
  /** Days from the last film to the last of the further ones, at the student’s own rhythm; a week where there is none yet. */
  readonly days: number;
  /** Swings of each further film. */
  readonly swingsEach: number;
}

/** Sizes beyond so many sds of a session mean are no change of a fundamental any more. Own choice. */
const LARGEST_UNITS = 16;
/** Halvings of the largest size; what is left is a quarter of an sd. */
const HALVINGS = 6;
/** Drawn futures. Own choice: a page waits for the answer. */
const DRAWS = 15;
/**
 * Of the drawn futures so many prove it where four real ones of five do: drawn swings are evenly spread, which is kinder than real
 * ones are. Measured on made tracks; see the README of this folder.
 */
const DRAWN_CHANCE = 0.9;

/**
 * The smallest lasting step that further films would prove, if it comes after so many of them.
 *
 * Futures are drawn as for a plan that would settle a track: from what is believed now, at the usual rhythm, camera and number
 * of swings; the step is added to every film after it; each future is judged by the looks’ own rule with a thinned noise
 * model. The draws are evenly spread, the same at every call.
 *
 * @param track one to three used sessions; others are left to the outlook of the verdict
 * @param films further films in all, 1 or more
 * @param before how many of them come before the change
 * @returns null without a used session
 */
export function smallestProvable(
  track: JudgedTrack,
  noise: NoiseModel,
  policy: Policy,
  { films, before }: { readonly films: number; readonly before: number },
): Provable | null {
  const { series } = judgedSeries(track, policy);
  const early = earlyLevel(series, noise, policy);
  if (early === null) return null;
  const planning = planningOf(series, noise, policy);
  const belief = lookBelief(series, noise, early).unchanged();
  const ahead = futuresOf(planning, belief, DRAWS);
  const swingsEach = usualSwings(series);
  const known = series.groups.length;
  const isProved = (size: number, draw: number): boolean => {
    const future = withStep(ahead.of({ sessions: films, swingsEach, care: 1 }, draw), known + before, size);
    return proves(future, known, planning.thin, "up", policy);
  };
  const last = series.groups.at(-1)?.day ?? 0;
  const future = ahead.of({ sessions: films, swingsEach, care: 1 }, 0);
  const size = smallestSize(ahead, early.unitSd * LARGEST_UNITS, isProved);
  return { size, days: (future.groups.at(-1)?.day ?? last) - last, swingsEach };
}

/** The median of the swings of the used films, at least one. */
function usualSwings(series: Series): number {
  const counts = series.groups
    .filter((group) => group.used)
    .map(({ values }) => values.length)
    .sort((a, b) => a - b);
  return Math.max(1, counts[counts.length >> 1] ?? 1);
}

function withStep(series: Series, from: number, size: number): Series {
  return {
    ...series,
    groups: series.groups.map((group, at) =>
      at < from ? group : { ...group, values: group.values.map((value) => value + size) },
    ),
  };
}

function smallestSize(
  ahead: Futures,
  largest: number,
  isProved: (size: number, draw: number) => boolean,
): number | null {
  const mayMiss = Math.floor(ahead.count * (1 - DRAWN_CHANCE) + 1e-9);
  const isEnough = (size: number): boolean => {
    let misses = 0;
    for (let draw = 0; draw < ahead.count && misses <= mayMiss; draw++) if (!isProved(size, draw)) misses++;
    return misses <= mayMiss;
  };
  if (!isEnough(largest)) return null;
  let [low, high] = [0, largest];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (isEnough(middle)) high = middle;
    else low = middle;
  }
  return high;
}
