import type { PlacedCapture } from "@/lib/capture/next-placement";
import type { FilmPlan } from "@/lib/domain/film-plan";
import type { Student } from "@/lib/domain/student";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { FamilySource } from "./family-source";

/** A track as a family's pictures need it. */
export interface LookTrack {
  readonly history: TrackHistory;
  readonly verdict: TrackVerdict;
}

/** Everything that is drawn, counted or shown how to do on a family's page rests on. */
export interface LookSource {
  readonly student: Pick<Student, "alias" | "hand" | "birthYear">;
  readonly today: string;
  /** Of the clubs in hand, in the order of work. */
  readonly tracks: readonly LookTrack[];
  /** Id of the fundamental in hand by the order of work; null: none is. */
  readonly inHand: string | null;
  readonly videos: FamilySource["videos"];
  /** Sizes, finished, as the story has them. */
  readonly numbers: readonly string[];
  /** The plan of which the family was told and that is awaited; null: none. */
  readonly plan: Pick<FilmPlan, "dueOn" | "body"> | null;
  /** Where the phone stood in the latest video of each view, latest first. */
  readonly captures: readonly PlacedCapture[];
}
