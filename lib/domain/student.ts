import type { Hand } from "./handedness";

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
}

/** What a consent is given for. */
export const CONSENT_KINDS = ["measure", "share"] as const;

/** What a consent is given for. */
export type ConsentKind = (typeof CONSENT_KINDS)[number];

/** Whose word a consent is; a guardian's holds until the student may speak for themselves. */
export const GIVERS = ["guardian", "student"] as const;

/** A consent: who gave it, from when, until when, and whether it was withdrawn. */
export interface Consent {
  readonly kind: ConsentKind;
  readonly givenBy: string;
  readonly giverIs: (typeof GIVERS)[number];
  readonly from: string;
  readonly until: string | null;
  readonly withdrawnOn: string | null;
}

/** Whether a consent to measure is in force on a day. */
export function consentInForce(consents: readonly Consent[], kind: ConsentKind, day: string): boolean {
  return consents.some(
    (consent) =>
      consent.kind === kind &&
      consent.from <= day &&
      (consent.until === null || consent.until >= day) &&
      (consent.withdrawnOn === null || consent.withdrawnOn > day),
  );
}

/** Kinds of an event that may begin a track anew. */
export const EVENT_KINDS = ["growth", "new-club", "break", "injury", "reader-change", "season-start"] as const;

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
  readonly dose: string;
}
