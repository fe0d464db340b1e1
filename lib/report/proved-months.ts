import type { ProvedChange } from "@/lib/domain/track-verdict";
import { changeTone, drawnChanges } from "./said";
import type { TrackSummary } from "./track-summary";

/** A gain or a slip that stood on the roster's list, with the month in which its new level's films begin. */
export interface ProvedMonth {
  readonly verdict: "gain" | "slip";
  /** `YYYY-MM` of the last day of the stretch in which it happened: from then on it surely holds. */
  readonly month: string;
}

/** One of them with the track that it is a change of. */
export interface ProvedOfTrack extends ProvedMonth {
  readonly track: TrackSummary;
  readonly change: ProvedChange;
}

/** Every gain and slip of some tracks that stood on the roster's list, earlier ones of a track too; moves that are neither count for none. */
export function provedOfTracks(tracks: readonly TrackSummary[]): readonly ProvedOfTrack[] {
  return tracks.flatMap((track) =>
    drawnChanges(track.verdict).flatMap((drawn): ProvedOfTrack[] => {
      const tone = changeTone(drawn);
      if (tone === "neither") return [];
      const { change } = drawn;
      return [{ verdict: tone === "toward" ? "gain" : "slip", month: change.to.slice(0, 7), track, change }];
    }),
  );
}

/** The same by verdict and month alone. */
export function provedMonths(tracks: readonly TrackSummary[]): readonly ProvedMonth[] {
  return provedOfTracks(tracks).map(({ verdict, month }) => ({ verdict, month }));
}

/** The same as the roster's address asks for it: `gain-2031-04`. */
export function provedIn(tracks: readonly TrackSummary[]): ReadonlySet<string> {
  return new Set(provedMonths(tracks).map(({ verdict, month }) => `${verdict}-${month}`));
}
