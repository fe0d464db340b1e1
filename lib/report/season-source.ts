import type { Asking } from "@/lib/domain/asking";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { Practice } from "@/lib/domain/practice";
import type { Session } from "@/lib/domain/session";
import type { DrillAssignment, Student, StudentEvent } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { ContactMentions } from "./contact-source";
import type { Link } from "./page-model";

/** One judged track of a season. */
export interface SeasonTrack {
  readonly history: TrackHistory;
  readonly verdict: TrackVerdict;
  /** What was decided about its question; null: it is asked. */
  readonly asking: Asking | null;
}

/** Everything that a student's season page rests on. */
export interface SeasonSource {
  readonly student: Student;
  /** Of the club group shown, in the order of work. */
  readonly tracks: readonly SeasonTrack[];
  readonly sessions: readonly Session[];
  readonly drills: readonly DrillAssignment[];
  readonly events: readonly StudentEvent[];
  /** Practice logged, taken back or not. */
  readonly practice?: readonly Practice[];
  readonly consent: "given" | "missing";
  readonly asOf: string;
  readonly today: string;
  readonly clubs: readonly (Link & { readonly current: "yes" | "no" })[];
  readonly clubGroup: string | null;
  readonly grouping: ClubGrouping;
  readonly mentions: ContactMentions;
  /** First day of the season. */
  readonly seasonStart: string;
}
