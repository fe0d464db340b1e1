import type { Fundamental } from "@/lib/domain/fundamental";
import type { NewProof, RosterStudent, WatchedTrack } from "@/lib/report/roster-source";
import { saidVerdict } from "@/lib/report/said";
import type { TrackSummary } from "@/lib/report/track-summary";

/** The students who are here, with the tracks of all their club groups. */
export interface Here {
  readonly entries: readonly Pick<RosterStudent, "student">[];
  readonly fundamentals: readonly Fundamental[];
  readonly all: readonly TrackSummary[];
}

/** A proved change by what it says: pressed "seen" on, it is not new again. */
export function proofKey(summary: TrackSummary): string {
  const change = summary.verdict.change;
  return `${summary.verdict.id} ${summary.verdict.verdict} ${change?.provedOn ?? ""}`;
}

function named(here: Here, summaries: readonly TrackSummary[]): WatchedTrack[] {
  const students = new Map(here.entries.map(({ student }) => [student.id, student]));
  const fundamentals = new Map<string, Fundamental>(here.fundamentals.map((each) => [each.id, each]));
  return summaries.flatMap((summary) => {
    const student = students.get(summary.studentId);
    const fundamental = fundamentals.get(summary.fundamentalId);
    return student && fundamental ? [{ student, fundamental, summary }] : [];
  });
}

/** The proved changes on the list that the viewer has not pressed "seen" on; slips first, then the latest. */
export function newProofs(here: Here, seenKeys: ReadonlySet<string>): NewProof[] {
  const rank = (proof: NewProof): number => (saidVerdict(proof.summary.verdict) === "slip" ? 0 : 1);
  const provedOn = (proof: NewProof): string => proof.summary.verdict.change?.provedOn ?? "";
  const fresh = here.all.filter(({ verdict }) => verdict.listed === true && verdict.change !== null);
  return named(here, fresh)
    .map((track) => ({ ...track, key: proofKey(track.summary) }))
    .filter(({ key }) => !seenKeys.has(key))
    .sort((a, b) => rank(a) - rank(b) || provedOn(b).localeCompare(provedOn(a)) || a.key.localeCompare(b.key));
}

/** The tracks with an alarm of the watch over what is owned, of everybody who is here. */
export function watchedTracks(here: Here): readonly WatchedTrack[] {
  return named(
    here,
    here.all.filter(({ verdict }) => verdict.watch !== null),
  );
}
