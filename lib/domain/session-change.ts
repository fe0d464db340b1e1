import type { EnteredCapture, EnteredSession } from "./session-entry";

/** What of a session can be said anew: everything but the readings; whoever read it read them all. */
export type SessionFacts = Pick<
  EnteredSession,
  | "day"
  | "clubGroup"
  | "club"
  | "circumstance"
  | "aid"
  | "daysSincePractice"
  | "note"
  | "reader"
  | "solid"
  | "balls"
  | "setAsideReason"
> & { readonly captures: readonly EnteredCapture[] };

/** Columns of what was seen that have a side of the picture, so that the other hand's picture turns their sign. */
export const SIDED_SIGHTINGS = ["pointing_stick_lean", "across_stick_slope", "plumb_lean", "beside_hands_cm"] as const;
