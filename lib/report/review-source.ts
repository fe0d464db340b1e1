import type { DrillAssignment } from "@/lib/domain/student";
import type { Interval } from "@/lib/domain/track-verdict";
import type { Plateau } from "@/lib/verdict/plateau";
import type { SeasonPage } from "./page-model";
import type { SeasonTrack } from "./season-source";

/** One judged track of the review. */
export interface ReviewTrack extends SeasonTrack {
  /** Level of the first films that count, as it was known then; null: none counts. */
  readonly start: Interval | null;
  readonly plateau: Plateau | null;
  /** Whether a proved gain stays without practice, in a sentence; empty: nothing is said of it. */
  readonly retained: string;
}

/** A drill of the season with what was asked and what was logged. */
export interface ReviewDrill {
  readonly given: DrillAssignment;
  /** Days on which practice was logged, and days asked for up to today; null: nobody said how many. */
  readonly done: number;
  readonly asked: number | null;
}

/** Everything that a review rests on: the very model of the season page, and what is worked out beside it. */
export interface ReviewSource {
  readonly student: { readonly id: string; readonly alias: string };
  readonly season: SeasonPage;
  /** Of the clubs in hand, in the order of work. */
  readonly tracks: readonly ReviewTrack[];
  readonly drills: readonly ReviewDrill[];
  readonly practiceDays: number;
  /** First and last film of the season; null: none. */
  readonly films: { readonly first: string; readonly last: string; readonly count: number } | null;
  readonly clubName: string;
  readonly seasonStart: string;
  readonly today: string;
}
