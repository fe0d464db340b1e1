import type { Fundamental } from "@/lib/domain/fundamental";
import { saidVerdict } from "./said";
import type { TrackSummary } from "./track-summary";

/** A track with its fundamental, in the order of work. */
export interface RankedTrack {
  readonly fundamental: Fundamental;
  readonly summary: TrackSummary;
}

/** Why a track is the one in hand. */
export type InHandReason = "slipped" | "outside" | "doubt";

/**
 * The one fundamental in hand: the first in the order of work that has slipped; else the first that lies outside its
 * band; else the first on its edge, which is measured better before it is coached. Null: everything measured is inside.
 *
 * @param tracks in the order of work
 */
export function chooseInHand(
  tracks: readonly RankedTrack[],
): { readonly track: RankedTrack; readonly reason: InHandReason } | null {
  const first = (reason: InHandReason, holds: (track: RankedTrack) => boolean) => {
    const track = tracks.find(holds);
    return track ? { track, reason } : null;
  };
  return (
    first(
      "slipped",
      ({ summary }) => saidVerdict(summary.verdict) === "slip" && summary.verdict.position !== "inside",
    ) ??
    first("outside", ({ summary }) => summary.verdict.position === "outside") ??
    first("doubt", ({ summary }) => summary.verdict.position === "edge")
  );
}
