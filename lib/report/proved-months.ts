import { changeTone, drawnChanges } from "./said";
import type { TrackSummary } from "./track-summary";

/** A gain or a slip that stood on the roster's list, with the month in which its new level's films begin. */
export interface ProvedMonth {
  readonly verdict: "gain" | "slip";
  /** `YYYY-MM` of the last day of the stretch in which it happened: from then on it surely holds. */
  readonly month: string;
}

/** Every gain and slip of some tracks that stood on the roster's list, earlier ones of a track too; moves that are neither count for none. */
export function provedMonths(tracks: readonly TrackSummary[]): readonly ProvedMonth[] {
  return tracks.flatMap(({ verdict }) =>
    drawnChanges(verdict).flatMap((drawn): ProvedMonth[] => {
      const tone = changeTone(drawn);
      if (tone === "neither") return [];
      return [{ verdict: tone === "toward" ? "gain" : "slip", month: drawn.change.to.slice(0, 7) }];
    }),
  );
}

/** The same as the roster's address asks for it: `gain-2031-04`. */
export function provedIn(tracks: readonly TrackSummary[]): ReadonlySet<string> {
  return new Set(provedMonths(tracks).map(({ verdict, month }) => `${verdict}-${month}`));
}
