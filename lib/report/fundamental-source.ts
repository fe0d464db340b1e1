import type { Asking } from "@/lib/domain/asking";
import type { Practice } from "@/lib/domain/practice";
import type { DrillAssignment, Student, StudentEvent } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { SquarePlan } from "@/lib/verdict/square-plan";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Link } from "./page-model";

/** Everything that the page of one fundamental rests on. */
export interface FundamentalSource {
  readonly student: Student;
  readonly history: TrackHistory;
  readonly verdict: TrackVerdict;
  readonly drills: readonly DrillAssignment[];
  readonly events: readonly StudentEvent[];
  /** Practice logged, taken back or not. */
  readonly practice?: readonly Practice[];
  readonly notMeasurable: readonly { readonly day: string; readonly swing: number }[];
  /** Readings of it that came of a read-back, with the day of reading; absent: none. */
  readonly readBack?: readonly { readonly sessionId: string; readonly swing: number; readonly readOn: string }[];
  readonly corrections: readonly {
    readonly day: string;
    readonly swing: number;
    readonly from: string;
    readonly to: string;
    readonly who: string;
    readonly why: string;
    readonly at: string;
  }[];
  /** Films that a phone checked from now on would save; null: none, or nothing is asked. */
  readonly squarePlan: SquarePlan | null;
  /** What was decided about the track's question; null: it is asked. */
  readonly asking: Asking | null;
  /** What is said of the phone of group sessions among the track's; absent: nothing. */
  readonly groupNotices?: readonly string[];
  readonly asOf: string;
  readonly today: string;
  /** Name of the club group shown. */
  readonly clubName: string;
  readonly otherClubs: readonly (Link & { readonly current: "yes" | "no" })[];
}
