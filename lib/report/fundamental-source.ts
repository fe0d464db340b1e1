import type { Asking } from "@/lib/domain/asking";
import type { DatedOwningRule } from "@/lib/domain/owning-rule";
import type { Practice } from "@/lib/domain/practice";
import type { DrillAssignment, Student, StudentEvent } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { CurvePoint } from "@/lib/verdict/reach-curve";
import type { SquarePlan } from "@/lib/verdict/square-plan";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { BesideTrack } from "./build-clubs-beside";
import type { FiguresSource } from "./figures-model";
import type { Link } from "./page-model";
import type { AnsweredPlan } from "./wished-plan";

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
  /** Films that somebody asks about, with what they would tell; null or absent: nothing is asked. */
  readonly asked?: AnsweredPlan | null;
  /** The learning curve behind dates or a stop; null or absent: none is said. */
  readonly reachCurve?: readonly CurvePoint[] | null;
  /** What the verdict was worked out with; absent: not told. */
  readonly figures?: FiguresSource;
  /** What was decided about the track's question; null: it is asked. */
  readonly asking: Asking | null;
  /** What is said of the phone of group sessions among the track's; absent: nothing. */
  readonly groupNotices?: readonly string[];
  /** The academy’s owning rules, in the order of entry; absent: the built-in one. */
  readonly owningRules?: readonly DatedOwningRule[];
  readonly asOf: string;
  readonly today: string;
  /** Name of the club group shown. */
  readonly clubName: string;
  /** The same fundamental with each club group, in the order of the clubs; absent: only with this one. */
  readonly beside?: readonly BesideTrack[];
  readonly otherClubs: readonly (Link & { readonly current: "yes" | "no" })[];
}
