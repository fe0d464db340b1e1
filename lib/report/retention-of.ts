import type { Practice } from "@/lib/domain/practice";
import type { DrillAssignment } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { decideRetention, type Retention } from "@/lib/verdict/decide-retention";
import { retentionFilms } from "@/lib/verdict/retention-films";
import type { TrackHistory } from "@/lib/verdict/track-history";

/** What it rests on whether a track's gain stays without practice. */
export interface RetentionSource {
  readonly history: TrackHistory;
  readonly verdict: TrackVerdict;
  readonly practice?: readonly Practice[];
  readonly drills: readonly (DrillAssignment & { readonly state?: "stands" | "taken-back" })[];
  /** Days after the last practice from which a film tells what stays. */
  readonly rest: number;
}

/**
 * Whether the last proved change of a track, if it is a gain, stays without practice, from its films since the new level
 * stands. The log of practice is believed to be kept from the first day of the drill that ran then; without one from its
 * first entry on.
 *
 * @returns null without a proved gain, and of one that isn't on the roster's list: it is told as no gain, so not as one that stays
 */
export function retentionOf({ history, verdict, practice = [], drills, rest }: RetentionSource): Retention | null {
  const { change, listed } = verdict;
  if (change === null || listed !== true) return null;
  const drill = drills.findLast(
    ({ fundamentalId, start, state }) =>
      state !== "taken-back" && fundamentalId === history.fundamental.id && start <= change.to,
  );
  const films = retentionFilms(history, practice, { from: change.to, loggedFrom: drill?.start ?? "", rest });
  return decideRetention(history, verdict, films);
}
