import type { Asking } from "@/lib/domain/asking";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import type { ConsentStanding } from "@/lib/domain/consent";
import type { DrillPractice } from "@/lib/domain/drill-practice";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { DatedOwningRule } from "@/lib/domain/owning-rule";
import type { Practice } from "@/lib/domain/practice";
import type { PriorityChoice } from "@/lib/domain/priority-choice";
import type { Session } from "@/lib/domain/session";
import type { DrillAssignment, Student, StudentEvent } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { Provable } from "@/lib/verdict/smallest-provable";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { ContactMentions } from "./contact-source";
import type { WorkFacts } from "./order-of-work";
import type { Link } from "./page-model";

/** One judged track of a season. */
export interface SeasonTrack {
  readonly history: TrackHistory;
  readonly verdict: TrackVerdict;
  /** What was decided about its question; null: it is asked. */
  readonly asking: Asking | null;
}

/** What further films could prove of one fundamental: with a second film before the first drill, and straight after the first. */
export interface FirstProvable {
  readonly after: Provable | null;
  /** Null: a second film is there already. */
  readonly straight: Provable | null;
}

/** Everything that a student's season page rests on. */
export interface SeasonSource {
  readonly student: Student;
  /** Of the club group shown, in the order of work. */
  readonly tracks: readonly SeasonTrack[];
  /** All of the academy, in the order of work. */
  readonly fundamentals: readonly Fundamental[];
  /** What decides of the one in hand beside what was measured. */
  readonly work: WorkFacts;
  /** What the coach put in hand with the clubs shown; null: the order of work chooses. */
  readonly choice: PriorityChoice | null;
  /** Every choice with them, oldest first; absent: none but the one in force. */
  readonly choices?: readonly PriorityChoice[];
  /** The academy’s owning rules, in the order of entry; absent: the built-in one. */
  readonly owningRules?: readonly DatedOwningRule[];
  readonly sessions: readonly Session[];
  readonly drills: readonly DrillAssignment[];
  readonly events: readonly StudentEvent[];
  /** Practice logged, taken back or not. */
  readonly practice?: readonly Practice[];
  /** Practice of each drill, asked and logged, by its id; absent: nobody counted. */
  readonly practised?: ReadonlyMap<string, DrillPractice>;
  /** Where the consent to measure stands today. */
  readonly consent: ConsentStanding;
  readonly asOf: string;
  readonly today: string;
  readonly clubs: readonly (Link & { readonly current: "yes" | "no" })[];
  readonly clubGroup: string | null;
  readonly grouping: ClubGrouping;
  readonly mentions: ContactMentions;
  /** What further films could prove, by fundamental; absent: there are films enough, or none. */
  readonly provable?: ReadonlyMap<string, FirstProvable>;
  /** First day of the season. */
  readonly seasonStart: string;
}
