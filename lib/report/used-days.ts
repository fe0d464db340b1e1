import type { TrackSummary } from "./track-summary";

/** Days on which a film of the student counts for anything, in order, each once. */
export function usedDays({ summaries }: { readonly summaries: readonly TrackSummary[] }): readonly string[] {
  // Asked of everybody at every view of a roster: without lists in between.
  const days = new Set<string>();
  for (const { sessions } of summaries) for (const { date, mark } of sessions) if (mark === "used") days.add(date);
  return [...days].sort();
}
