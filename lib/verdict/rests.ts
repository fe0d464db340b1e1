import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { saidVerdict } from "./said-verdict";

/**
 * Whether a fundamental rests, so that minutes go where something is open: it is owned, what is said of it is settled, and no
 * alarm is raised. Then one of so many films reads it (`KEEP_THRESHOLDS.restEvery`). What is owned and not settled is read in
 * turn, with a plan that would settle it or without one: the films can't say yet that nothing moved.
 *
 * @source SEASON.md 12
 */
export function rests(verdict: Pick<TrackVerdict, "verdict" | "listed" | "ownedSince" | "watch">): boolean {
  return verdict.ownedSince !== null && verdict.watch === null && saidVerdict(verdict) !== "open";
}
