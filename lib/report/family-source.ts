import type { Consent } from "@/lib/domain/consent";
import type { FamilyLink, FamilyRequest } from "@/lib/domain/family-link";
import type { Student, StudentEvent } from "@/lib/domain/student";
import type { FamilyTrack } from "./family-findings";
import type { FamilyLogSource, PracticeEntry } from "./family-log-source";
import type { FamilyLook } from "./family-look-model";
import type { FamilyStory } from "./family-story-model";

/** Everything that a family's page rests on. */
export interface FamilySource extends Pick<FamilyLogSource, "key" | "typed" | "most"> {
  readonly student: Student;
  readonly link: Pick<FamilyLink, "id" | "label" | "expiresAt">;
  readonly today: string;
  /** What is told first, as in every message. */
  readonly story: FamilyStory;
  readonly look: FamilyLook;
  /** Of the clubs in hand, in the order of work. */
  readonly tracks: readonly FamilyTrack[];
  /** Every filmed session by day, and whether something that was measured in it counts. */
  readonly videos: readonly { readonly day: string; readonly use: "used" | "apart" }[];
  /** The drill in hand; null: none runs. */
  readonly task: {
    readonly drill: string;
    readonly how: string;
    readonly dose: string;
    readonly cautions: string;
    /** That it rests before the video that measures it; empty or absent: nothing is asked. */
    readonly rest?: string;
    /** That the lot chose it; empty or absent: a coach did. */
    readonly lot?: string;
    /** Of the dose; null or absent: it names none. */
    readonly minutes?: number | null;
    readonly daysAWeek?: number | null;
  } | null;
  /** What stands of the last days, and every report of pain that stands. */
  readonly practice: readonly PracticeEntry[];
  readonly events: readonly StudentEvent[];
  /** In force. */
  readonly consents: readonly Consent[];
  /** Of the student; those of other links aren't shown. */
  readonly requests: readonly FamilyRequest[];
  /** Openings of this link before this one, latest first. */
  readonly openings: readonly string[];
  readonly keepMonths: number;
  /** What was just done, as the page's address says it; null: nothing. */
  readonly done: string | null;
  readonly dayOf: (instant: string) => string;
  readonly sayAt: (instant: string) => string;
}
