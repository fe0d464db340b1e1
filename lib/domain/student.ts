import type { Hand } from "./handedness";
import type { Language } from "./language";

/** A student. Birth year, not birthday; an alias or a first name, not more. */
export interface Student {
  readonly id: string;
  readonly alias: string;
  readonly birthYear: number | null;
  readonly hand: Hand;
  /** IANA zone where the student is. */
  readonly zone: string;
  /** Usual club, as free words. */
  readonly clubs: string;
  /** In which the family reads; absent: English. */
  readonly language?: Language;
}

/**
 * Kinds of an event that may begin a track anew. `pause` is a pause of which nobody says why: recorded so by whoever may not
 * know it, and all that they read of a pause for an injury.
 */
export const EVENT_KINDS = ["growth", "new-club", "break", "injury", "pause", "reader-change", "season-start"] as const;

/** Kinds of an event. */
export type EventKind = (typeof EVENT_KINDS)[number];

/** Where it hurts, in a word of a short list; a diagnosis has no place here. */
export const PAIN_PLACES = [
  "back",
  "neck",
  "shoulder",
  "elbow",
  "wrist",
  "hand",
  "ribs",
  "hip",
  "knee",
  "ankle",
  "foot",
  "elsewhere",
] as const;

/** Where it hurts. */
export type PainPlace = (typeof PAIN_PLACES)[number];

/** Something that happened to a student on a day. */
export interface StudentEvent {
  readonly id: string;
  readonly kind: EventKind;
  readonly day: string;
  /** Last day of a break or of a pause; null or absent: a day only, or no end known. */
  readonly endDay?: string | null;
  /** Of a pause for an injury; null or absent otherwise. */
  readonly place?: PainPlace | null;
  /** Free words; of a new reader the name, of an injury always empty. */
  readonly note: string;
  /** Fundamentals whose tracks begin anew on that day; empty: drawn only. */
  readonly rebaselines: readonly string[];
}

/** A drill given to a student for a fundamental. */
export interface DrillAssignment {
  readonly id: string;
  readonly drill: string;
  readonly fundamentalId: string;
  readonly start: string;
  readonly end: string | null;
  /** In the coach's words; what is asked in numbers stands in fields of its own. */
  readonly dose: string;
  /** Repeats on each day of practice; null or absent: not said. */
  readonly reps?: number | null;
  /** Minutes on each day of practice; null or absent: not said, or the first of the words. */
  readonly minutesADay?: number | null;
  /** Days of practice a week; null or absent: not said. */
  readonly daysAWeek?: number | null;
  /** When to stop before the end; empty or absent: not said. */
  readonly stopRule?: string;
  /** The day on which it is measured again; null or absent: none was set. */
  readonly remeasureOn?: string | null;
}
