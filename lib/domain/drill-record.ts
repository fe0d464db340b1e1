import type { DrillAssignment } from "./student";

/** Minutes a day that can be asked for: more is no drill any more (typical are 10 to 15; common practice, no source). */
export const MOST_MINUTES = 300;

/** How much and how often a drill was asked for, as far as that was said. */
export interface AskedDose {
  /** Repeats on each day of practice; null: not said. */
  readonly reps: number | null;
  /** Minutes on each day of practice; null: not said, or given before they had a field and begin the dose's words. */
  readonly minutesADay: number | null;
  /** Days of practice a week, 1 to 7; null: not said. */
  readonly daysAWeek: number | null;
  /** When to stop before the end; empty: not said. Pain always stops it. */
  readonly stopRule: string;
  /** The day on which what it does is measured again; null: none was set. */
  readonly remeasureOn: string | null;
}

/** A drill as it was given, taken back or not. */
export type AssignmentRecord = DrillAssignment &
  AskedDose & {
    readonly drillId: string;
    readonly who: string;
    /** ISO instant; null: given before that was kept. */
    readonly recordedAt: string | null;
    /** Why it was stopped; null: it runs, or nobody said. */
    readonly endWhy: string | null;
    readonly state: "stands" | "taken-back";
  };

/** A drill of a student that runs and whose day to be measured again has come. */
export interface DueDrill {
  readonly studentId: string;
  readonly alias: string;
  readonly assignmentId: string;
  readonly drill: string;
  readonly fundamentalId: string;
  readonly start: string;
  readonly remeasureOn: string;
  /** Day of the last film since that day, of whatever clubs; null: none has come. */
  readonly filmedOn: string | null;
}

/** How a drill was last given to anybody whom the viewer may see. */
export type LastGiven = AskedDose & { readonly drillId: string; readonly start: string; readonly dose: string };
