import type { CalendarDay } from "./calendar-day";
import type { Edges } from "./fundamental";
import type { DatedOwningRule } from "./owning-rule";

/** One session as the verdict takes it in: readings in force, corrected values, final camera sd. */
export interface JudgedSession {
  readonly date: CalendarDay;
  /** Sd of the camera error shared by the session's swings, in the unit; 0 or more. */
  readonly captureSd: number;
  /** One value a swing, in the unit, in the order of the swings. */
  readonly swings: readonly number[];
  /** Sessions with equal labels share one placement of the phone, so one camera error. */
  readonly captureSetup?: string;
  /** False: set aside before judging; keeps its index, unseen by the engine. */
  readonly use?: boolean;
  readonly reader?: string;
  /** Days since the last practice logged or drill reminder; absent: not known. */
  readonly daysSincePractice?: number;
  /** Name of the noise model with which the look after this session is said. */
  readonly noiseModel?: string;
  /** The reader's error by which the look after this session is said; absent: the track's. */
  readonly readerSd?: number;
  readonly readerOffsetSd?: number;
}

/** A goal with its first day. */
export interface DatedGoal extends Edges {
  readonly from: CalendarDay;
  /** Least change worth having against this goal, in the unit; absent where another dated goal has one: none. */
  readonly worthwhileAtLeast?: number;
}

/** The judged input of one track: one student × one fundamental × one club group since the last re-baseline. */
export interface JudgedTrack {
  readonly id: string;
  readonly unit?: string;
  /** Noise is learned among tracks of one pool. */
  readonly pool?: string;
  /** The goal in force at the last session. */
  readonly goal?: Edges;
  /** Goals by their first day, oldest first, where they changed on the way; a look, and a proved change, keep the word of their own day. */
  readonly goals?: readonly DatedGoal[];
  /** Owning rules of the academy by their first day, in the order of entry; before the first the policy's. */
  readonly owning?: readonly DatedOwningRule[];
  readonly better?: "up" | "down";
  readonly smallestWorthwhile?: number;
  /** Least change worth having against the goal, in the unit; without a smallest worthwhile one of its own, or of a dated goal. */
  readonly worthwhileAtLeast?: number;
  /** Sd of one reading at the last look, in the unit; and of the offset between readers. */
  readonly readerSd?: number;
  readonly readerOffsetSd?: number;
  /** Sd of the camera error that the best care leaves, in the unit: no plan counts on much less. Absent: not known. */
  readonly checkedCaptureSd?: number;
  readonly startLevel?: { readonly mean: number; readonly sd: number };
  /** Any order; judged in date order, sessions of one day in the order given. */
  readonly sessions: readonly JudgedSession[];
}
