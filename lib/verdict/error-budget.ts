import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { readingStep } from "@/lib/stats/reading-step";
import type { Series } from "@/lib/stats/series";
import { trueReplicateVariance } from "@/lib/stats/true-replicate-variance";

/**
 * What the doubt is made of, as sds in the unit: of a day, of one swing without its reading error, of one reading, and of
 * one place of the camera. The variance of a session mean is day and camera whole, swing and reading divided by the swings.
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
  const swing = trueReplicateVariance(
    { replicateSd, readingErrorSd: series.readingErrorSd, step: readingStep(used.flatMap((group) => group.values)) },
    1,
  );
  return {
    day: daySd,
    swing: Math.sqrt(swing),
    reader: series.readingErrorSd,
    camera: Math.sqrt(mean((group) => group.sharedErrorSd ** 2)),
  };
}
