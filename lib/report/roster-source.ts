import type { Asking } from "@/lib/domain/asking";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Student } from "@/lib/domain/student";
import type { Link } from "./page-model";
import type { TrackSummary } from "./track-summary";

/** One student of a roster with what was measured. */
export interface RosterStudent {
  readonly student: Student;
  readonly sessions: number;
  readonly lastDay: string | null;
  readonly lastClub: string | null;
  /** Solid strikes of balls hit over the latest sessions with a count; null: none counted. */
  readonly contact: { readonly solid: number; readonly balls: number } | null;
  /** Of the club group in hand, in the order of work. */
  readonly summaries: readonly TrackSummary[];
  /** Decisions on the student's questions, oldest first. */
  readonly askings: readonly Asking[];
}

/** A proved change on the roster's list that the viewer has not pressed "seen" on. */
export interface NewProof {
  readonly key: string;
  readonly student: Student;
  readonly fundamental: Fundamental;
  readonly summary: TrackSummary;
}

/** A track with an alarm of the watch over what is owned. */
export interface WatchedTrack {
  readonly student: Student;
  readonly fundamental: Fundamental;
  readonly summary: TrackSummary;
}

/** Everything that the roster page rests on. */
export interface RosterSource {
  readonly academyName: string;
  readonly students: readonly RosterStudent[];
  /** Students in all, on this and other pages. */
  readonly total: number;
  readonly proofs: readonly NewProof[];
  /** Of all students and club groups, any order. */
  readonly watched: readonly WatchedTrack[];
  readonly fundamentals: readonly Fundamental[];
  readonly seen: { readonly day: string } | null;
  readonly counts: {
    readonly gain: number;
    readonly slip: number;
    readonly steady: number;
    readonly open: number;
    readonly moved: number;
  };
  readonly from: string;
  readonly asOf: string;
  readonly today: string;
  readonly sort: readonly (Link & { readonly current: "yes" | "no" })[];
  readonly pages: readonly (Link & { readonly current: "yes" | "no" })[];
}
