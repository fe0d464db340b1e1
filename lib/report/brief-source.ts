import type { ClubGroup } from "@/lib/domain/club-group";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { NewProof, RosterStudent, WatchedTrack } from "./roster-source";
import type { TrackSummary } from "./track-summary";

/** A drill that runs on the day. */
export interface RunningDrill {
  readonly studentId: string;
  readonly fundamentalId: string;
  readonly drill: string;
  readonly start: string;
}

/** A break or a pause that is on, whatever it is for. */
export interface RunningPause {
  readonly studentId: string;
  readonly day: string;
  /** The last day; null: no end is known. */
  readonly endDay: string | null;
}

/** The latest word of a family that something hurts, for whoever may know it. */
export interface LatestPain {
  /** Of the entry with which it was said. */
  readonly id: string;
  readonly studentId: string;
  readonly day: string;
  readonly place: string;
}

/** A film that was promised, whose day has passed, and that hasn't come. */
export interface AwaitedFilm {
  readonly planId: string;
  readonly studentId: string;
  /** For which it was promised. */
  readonly clubGroup: ClubGroup;
  readonly alias: string;
  readonly dueOn: string;
  /** The day on which the family was last reminded; null: it wasn't. */
  readonly remindedOn: string | null;
}

/** A student of the brief: of those who are here. */
export type BriefStudent = Pick<
  RosterStudent,
  "student" | "lastDay" | "sessions" | "summaries" | "askings" | "work"
> & {
  /** The different days of films that count with the clubs in hand, in order, as the season's page counts them. */
  readonly filmDays: readonly string[];
  /** With fewer than two such days the day on which the record was begun, else that of the last film, `YYYY-MM-DD`. */
  readonly since: string;
};

/** Everything that the brief rests on. */
export interface BriefSource {
  readonly today: string;
  readonly fundamentals: readonly Fundamental[];
  readonly students: readonly BriefStudent[];
  /** Of all club groups of the students who are here. */
  readonly all: readonly TrackSummary[];
  /** On the list and not pressed "seen" on. */
  readonly proofs: readonly NewProof[];
  readonly watched: readonly WatchedTrack[];
  readonly drills: readonly RunningDrill[];
  readonly pauses: readonly RunningPause[];
  readonly pains: readonly LatestPain[];
  readonly due: readonly AwaitedFilm[];
  /** After how many weeks without a film a student counts as not seen. */
  readonly weeks: number;
}
