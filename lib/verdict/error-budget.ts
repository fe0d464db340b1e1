import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { readingStep } from "@/lib/stats/reading-step";
import type { Series } from "@/lib/stats/series";
import { trueReplicateVariance } from "@/lib/stats/true-replicate-variance";

/**
 * What the doubt of one session mean is made of, as sds in the unit; their squares add up to U squared, as far as the
 * swing sd isn't below the reader's.
 *
 * @param series its used groups give the swings a session and the camera sds; none: null
 * @param daySd day-to-day sd
 * @param replicateSd sd of one swing, its reading error included
 */
export function errorBudget(series: Series, daySd: number, replicateSd: number): TrackVerdict["errorBudget"] {
  const used = series.groups.filter((group) => group.used);
  if (used.length === 0) return null;
  const mean = (of: (group: (typeof used)[number]) => number): number =>
    used.reduce((sum, group) => sum + of(group), 0) / used.length;
  const perSwing = mean((group) => 1 / group.values.length);
  const swing = trueReplicateVariance(
    { replicateSd, readingErrorSd: series.readingErrorSd, step: readingStep(used.flatMap((group) => group.values)) },
    1,
  );
  return {
    day: daySd,
    swing: Math.sqrt(swing * perSwing),
    reader: series.readingErrorSd * Math.sqrt(perSwing),
    camera: Math.sqrt(mean((group) => group.sharedErrorSd ** 2)),
  };
}
