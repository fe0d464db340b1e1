import type { CalendarDay } from "./calendar-day";
import type { ClubGroup } from "./club-group";
import type { FundamentalId, View } from "./fundamental";
import type { SignRule } from "./handedness";

/** Under what circumstances a session was filmed. Only `unaided` sessions are judged. */
export const CIRCUMSTANCES = ["unaided", "aid-in-view", "in-lesson"] as const;

/** Under what circumstances a session was filmed. */
export type Circumstance = (typeof CIRCUMSTANCES)[number];

/** Whether the phone stood where it stood last time. */
export const PLACEMENTS = ["same", "anew", "unknown"] as const;

/** Whether the phone stood where it stood last time. */
export type Placement = (typeof PLACEMENTS)[number];

/**
 * What is known of how square the phone stood.
 *
 * `square`: checked against sticks and a plumb line; `off`: off by about the stated amount; `unknown`: nobody looked.
 */
export const SQUARENESS = ["square", "off", "unknown"] as const;

/** What is known of how square the phone stood. */
export type Squareness = (typeof SQUARENESS)[number];

/**
 * What was seen of where the phone stood, as it was read off; what follows from it is worked out anew each time.
 *
 * Angles in degrees, lengths in cm; null: not looked at. Signs are handedness-neutral, as those of readings.
 */
export interface CaptureSightings {
  /**
   * Lean from the picture's vertical of the stick that points at the phone: face-on the one square to the target line, down
   * the line the one along it. + where its near end lies farther from the target, or farther from the ball's side.
   */
  readonly pointingStickLean: number | null;
  /** Slope of the other stick, which lies across the picture. + where its end away from the target, or on the ball's side, is higher. */
  readonly acrossStickSlope: number | null;
  /** Lean of something upright (door edge, plumb line). + where its top leans away from the target, or toward the ball. */
  readonly plumbLean: number | null;
  /** From the ground to the lens. */
  readonly lensHeightCm: number | null;
  /** From the ground to the student's hands at setup. */
  readonly handsHeightCm: number | null;
  /** Along the ground from the phone to the student. */
  readonly distanceCm: number | null;
  /** Down the line: from the line through the hands to the phone; + on the ball's side. */
  readonly besideHandsCm: number | null;
  readonly framesPerSecond: number | null;
  /** The shutter was open for one part in so many of a second. */
  readonly shutterPerSecond: number | null;
}

/** Names of what may be seen of a placement. */
export const SIGHTINGS = [
  "pointingStickLean",
  "acrossStickSlope",
  "plumbLean",
  "lensHeightCm",
  "handsHeightCm",
  "distanceCm",
  "besideHandsCm",
  "framesPerSecond",
  "shutterPerSecond",
] as const satisfies readonly (keyof CaptureSightings)[];

/** Nothing was looked at. */
export const NOTHING_SEEN: CaptureSightings = {
  pointingStickLean: null,
  acrossStickSlope: null,
  plumbLean: null,
  lensHeightCm: null,
  handsHeightCm: null,
  distanceCm: null,
  besideHandsCm: null,
  framesPerSecond: null,
  shutterPerSecond: null,
};

/** One view's camera record of a session. */
export interface Capture {
  readonly view: View;
  readonly placement: Placement;
  /** Sessions with equal labels share one placement of the phone; null: set up anew or unknown. */
  readonly placementLabel: string | null;
  readonly squareness: Squareness;
  /** How far off square: degrees of yaw face-on, centimetres beside the line down the line; null unless `off`. */
  readonly offBy: number | null;
  readonly seen: CaptureSightings;
  /** Who placed the phone; null: not said. */
  readonly placedBy: string | null;
  /** Sd typed for the whole camera error, in a fundamental's unit; overrides what the record implies. Null: none typed. */
  readonly statedSd: number | null;
  /** Why the view was set aside; null: it counts. */
  readonly setAsideReason: string | null;
  /** Film and frame to open again; the tool holds none. */
  readonly filmReference: string | null;
}

/** One filming on one day. */
export interface Session {
  readonly id: string;
  readonly studentId: string;
  /** The day where the student is. */
  readonly day: CalendarDay;
  /** Order among sessions of one day. */
  readonly sequence: number;
  readonly clubGroup: ClubGroup;
  readonly club: string | null;
  readonly reader: string;
  readonly circumstance: Circumstance;
  readonly aid: string | null;
  readonly stanceWidthCm: number | null;
  readonly daysSincePractice: number | null;
  /** Things that made the day unlike others, as short words (`wind`, `tired`, `new-club`). */
  readonly marks: readonly string[];
  readonly note: string | null;
  /** Solid strikes of balls hit; null: not counted. */
  readonly solid: number | null;
  readonly balls: number | null;
  readonly setAsideReason: string | null;
  /** Sessions of one group were filmed on one occasion, with one check of the phone; null: filmed alone. */
  readonly groupId: string | null;
}

/** One reading in force: one value of one fundamental from one swing by the session's reader. */
export interface Reading {
  readonly sessionId: string;
  readonly swing: number;
  readonly fundamentalId: FundamentalId;
  /** Handedness-neutral, in the fundamental's unit; null: not measurable. */
  readonly value: number | null;
  /** What was typed, character by character. */
  readonly typed: string;
  readonly signRule: SignRule;
}
