import type { CalendarDay } from "./calendar-day";
import type { Hand } from "./handedness";
import type { JudgedTrack } from "./judged-track";

/** One stretch of a student on a drill. */
export interface ComparedDrill {
  readonly drill: string;
  readonly start: CalendarDay;
  /** Last day; absent: it goes on, or its end isn't on file. */
  readonly end?: CalendarDay;
  /** What was practised of it, in minutes and on so many days; absent: not logged. */
  readonly dose?: { readonly minutes: number; readonly days: number };
  /** Whether a coach chose it or a coin did; absent: a coach. */
  readonly assigned?: "choice" | "chance";
}

/** A stretch in which a student was left without a drill on purpose; `to` is its last day. */
export interface WaitingStretch {
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

/** A judged track with what the comparison of drills needs beside it. */
export interface ComparedTrack extends JudgedTrack {
  readonly student: string;
  readonly coach: string;
  readonly ageYears?: number;
  readonly handedness?: Hand;
  /** Any order; empty for a student without a drill on file. */
  readonly drills: readonly ComparedDrill[];
  readonly waiting?: readonly WaitingStretch[];
}
