import type { DrillPractice } from "@/lib/domain/drill-practice";
import type { Session } from "@/lib/domain/session";
import type { DrillAssignment, Student, StudentEvent } from "@/lib/domain/student";
import type { Told } from "@/lib/domain/told";
import type { Plateau } from "@/lib/verdict/plateau";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { FamilyTrack } from "./family-findings";
import type { PracticeEntry } from "./family-log-source";
import type { PlanFollowed } from "./plan-followed";

/** A track with what is said of it after ten weeks without a change; null: nothing is. */
export interface StoryTrack extends FamilyTrack {
  readonly history: Pick<TrackHistory, "fundamental" | "sessions" | "begins" | "goal">;
  readonly plateau: Plateau | null;
  /** What the films of a plan that was taken and followed leave open; absent: none was. */
  readonly followed?: PlanFollowed;
}

/** The drill in hand, in few words. */
export interface StoryTask {
  readonly drill: string;
  readonly dose: string;
  readonly fundamentalId: string;
  readonly start: string;
  /** The day of the next video; null: none was set. */
  readonly remeasureOn: string | null;
  /** Asked and logged in the days that the page shows; null: it has not begun. */
  readonly week: Pick<DrillPractice, "asked" | "practised" | "days" | "stoppedDays"> | null;
}

/** Everything that a family's story rests on. */
export interface StorySource {
  readonly student: Pick<Student, "alias" | "hand" | "birthYear">;
  readonly today: string;
  /** Of the clubs in hand, in the order of work. */
  readonly tracks: readonly StoryTrack[];
  /** Every filmed session by day, and whether something that was measured in it counts. */
  readonly videos: readonly { readonly day: string; readonly use: "used" | "apart" }[];
  /** Null: none runs. */
  readonly task: StoryTask | null;
  /** Every drill on file. */
  readonly drills: readonly Pick<DrillAssignment, "fundamentalId" | "start" | "end">[];
  /** What stands of the days that the page shows, and every report of pain that the reader may know of and that stands. */
  readonly practice: readonly PracticeEntry[];
  readonly events: readonly StudentEvent[];
  /** Where solid strikes are counted; null: no club is in hand. */
  readonly contact: {
    readonly sessions: readonly Session[];
    readonly clubGroup: string;
    readonly seasonStart: string;
  } | null;
  /** Days on which a page or a message of this reader was read, in any order. */
  readonly openings: readonly string[];
  /** What the family was told with the clubs in hand, as it was sent, in the order in which it was; absent: nothing. */
  readonly told?: readonly Told[];
}
