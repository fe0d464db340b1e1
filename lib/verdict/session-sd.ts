import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { HistorySession, TrackHistory } from "./session-history";

/**
 * The sd of one session's mean, in the unit: day, camera, swing and reader together. Before the day's and the swing's are
 * known (`errorBudget` null) camera and reader alone.
 */
export function sessionSd(
  history: Pick<TrackHistory, "judged" | "fundamental">,
  { errorBudget: budget }: Pick<TrackVerdict, "errorBudget">,
  entry: Pick<HistorySession, "swings" | "captureSd">,
): number {
  const readings = Math.max(1, entry.swings.length);
  if (budget === null)
    return Math.hypot(entry.captureSd, (history.judged.readerSd ?? history.fundamental.readerSd) / Math.sqrt(readings));
  return Math.hypot(budget.day, entry.captureSd, Math.hypot(budget.swing, budget.reader) / Math.sqrt(readings));
}
