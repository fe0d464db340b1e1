import type { Edges } from "@/lib/domain/fundamental";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { Interval, Moved, Position, Verdict } from "@/lib/domain/track-verdict";
import type { Posterior } from "@/lib/stats/look";
import type { Policy } from "./policy";

/** Of a band's half-width, the part that a change worth having moves. Common practice, no source. */
const BAND_PART = 3;

/** A change worth having against a band of one edge, in the unit. Common practice, no source. */
const ONE_EDGE = 3;

/** The least change worth having against a goal band, in the unit; undefined: a band without edges. */
export function leastWorthwhile({ low, high }: Edges): number | undefined {
  if (low === null && high === null) return undefined;
  return low === null || high === null ? ONE_EDGE : (high - low) / 2 / BAND_PART;
}

/**
 * The smallest worthwhile change at a look, in the unit: the track's own; else so many sds of one session mean, and, where
 * a least one is stated, the larger of the two in whole units.
 *
 * @param unitSd sd of one session mean at that look
 */
export function smallestWorthwhile(track: JudgedTrack, unitSd: number, policy: Policy): number {
  const provable = policy.smallestWorthwhile * unitSd;
  if (track.smallestWorthwhile !== undefined) return track.smallestWorthwhile;
  if (track.worthwhileAtLeast === undefined) return provable;
  return Math.ceil(Math.max(track.worthwhileAtLeast, provable) - 1e-9);
}

/**
 * Level before and after a change. The size is the engine's; the old level gives way by the little that separates
 * medians of a mixture, so that a printed difference is that of the printed levels.
 */
export function levelsOf(found: Posterior): { readonly before: Interval; readonly after: Interval } {
  const shift = found.level.estimate - found.size.estimate - found.levelBefore.estimate;
  const old = found.levelBefore;
  return {
    before: {
      estimate: old.estimate + shift,
      low80: old.low80 + shift,
      high80: old.high80 + shift,
      low95: old.low95 + shift,
      high95: old.high95 + shift,
    },
    after: found.level,
  };
}

/**
 * Whether a proved change is a gain, a slip, or neither.
 *
 * With `better`, its direction decides. Without, the expected distance of a swing from the goal band at the old and at
 * the new level, day and swing spread included; a difference under a tenth of the smallest worthwhile change is steady.
 * With neither, up is taken for better.
 */
export function decideWorth(track: JudgedTrack, found: Posterior, direction: "up" | "down", policy: Policy): Verdict {
  if (track.better !== undefined || track.goal === undefined)
    return direction === (track.better ?? "up") ? "gain" : "slip";
  const { before, after } = levelsOf(found);
  const nearer =
    found.expectedDistance(before.estimate, track.goal) - found.expectedDistance(after.estimate, track.goal);
  if (Math.abs(nearer) < policy.sameDistance * smallestWorthwhile(track, found.unitSd, policy)) return "steady";
  return nearer > 0 ? "gain" : "slip";
}

/**
 * Whether a move of so much from a level leads away from the goal: against `better` where that is stated, else by the
 * expected distance of a swing from the band, farther by a tenth of the smallest worthwhile change at least.
 *
 * @param found the engine's answer on the track, whose spread counts
 * @param size in the unit; above 0 for up
 */
export function leadsAway(track: JudgedTrack, found: Posterior, level: number, size: number, policy: Policy): boolean {
  if (track.better !== undefined || track.goal === undefined)
    return (track.better ?? "up") === (size > 0 ? "down" : "up");
  const farther = found.expectedDistance(level + size, track.goal) - found.expectedDistance(level, track.goal);
  return farther >= policy.sameDistance * smallestWorthwhile(track, found.unitSd, policy);
}

function side(level: number, goal: Edges): "below" | "inside" | "above" {
  if (goal.low !== null && level < goal.low) return "below";
  return goal.high !== null && level > goal.high ? "above" : "inside";
}

/** A move that is neither better nor worse by itself: within the band, or from outside one side to outside the other. */
export function decideMoved(before: Interval, after: Interval, goal: Edges | undefined): Moved | null {
  if (goal === undefined) return null;
  const [from, to] = [side(before.estimate, goal), side(after.estimate, goal)];
  if (from === "inside" && to === "inside") return "within";
  return from !== "inside" && to !== "inside" && from !== to ? "through" : null;
}

/** Where a level lies: inside with its whole 95 of 100 interval, outside with all of it, or at an edge. */
export function decidePosition(level: Interval, goal: Edges): Position {
  const low = goal.low ?? Number.NEGATIVE_INFINITY;
  const high = goal.high ?? Number.POSITIVE_INFINITY;
  if (level.low95 >= low && level.high95 <= high) return "inside";
  return level.low95 > high || level.high95 < low ? "outside" : "edge";
}
