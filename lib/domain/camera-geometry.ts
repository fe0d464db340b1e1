import { type BuiltInId, isBuiltInId } from "./catalogue";
import type { Fundamental } from "./fundamental";

/** A number that isn't known for sure: its best value and an sd, in one unit. */
export interface Doubted {
  readonly value: number;
  readonly sd: number;
}

/**
 * A line's lean toward the phone, which a phone off to the side lets into the picture, degrees.
 *
 * It begins as the lean at setup, + toward the phone, and goes on by `change` until the checkpoint.
 */
export interface LeanToPhone {
  /** Belief about the lean at setup where nobody read it. */
  readonly usual: Doubted;
  /** The fundamental that reads it at setup, from the other view; its session's value stands in for `usual`. */
  readonly readBy: BuiltInId;
  readonly change: Doubted;
}

/** How a fundamental is read off a picture, as far as the phone's place enters. Angles in degrees, lengths in cm. */
export type CameraGeometry =
  /** The lean of a line from the picture's vertical. */
  | { readonly kind: "lean"; readonly toPhone: LeanToPhone }
  /** The angle between a level arm and a club that leans out of the picture, away from the phone. */
  | { readonly kind: "angle"; readonly outOfPicture: Doubted }
  /** A way sideways as a share of the stance; the way toward the phone, which no still shows, has this sd. */
  | { readonly kind: "move"; readonly towardPhoneSdCm: number }
  /** The turn of a line seen end-on: 1 where a phone on the ball's side adds to it, -1 where it takes away. */
  | { readonly kind: "line"; readonly turns: 1 | -1; readonly against: "a stick on the ground" | "the picture" }
  /** Only the size of the error is known, from the fundamental's sensitivities. */
  | { readonly kind: "rough" };

/** What a film has to be for a fundamental to be read at all, where it moves fast. */
export interface CameraTiming {
  /** How fast it changes at its checkpoint, degrees a second; roughly, from memory. */
  readonly degreesPerSecond: number;
  /** Fewest pictures a second, and the longest shutter as one part in so many of a second; null: any. */
  readonly needs: { readonly framesPerSecond: number; readonly shutterPerSecond: number } | null;
}

/** What a film has to be for the shaft to be read at impact; common practice, no source. */
export const IMPACT_FILM = { framesPerSecond: 240, shutterPerSecond: 1000 } as const;

const ROUGH: CameraGeometry = { kind: "rough" };
const MOVE: CameraGeometry = { kind: "move", towardPhoneSdCm: 3 };

/** The forward bend at setup, and how much of it is left by the top and at impact. */
const bent = (change: Doubted): CameraGeometry => ({
  kind: "lean",
  toPhone: { usual: { value: 35, sd: 5 }, readBy: "posture-bend", change },
});

/**
 * Bends and the club's lean out of the picture: common practice, no source. A bend of 35 at setup and 30 at the top lets
 * .12 degrees of tilt kept in per degree of yaw.
 */
const GEOMETRIES: Readonly<Record<BuiltInId, CameraGeometry>> = {
  "trail-v": ROUGH,
  "lead-v": ROUGH,
  "foot-line": { kind: "line", turns: 1, against: "a stick on the ground" },
  "setup-tilt": bent({ value: 0, sd: 0 }),
  "posture-bend": {
    kind: "lean",
    toPhone: { usual: { value: 7, sd: 4 }, readBy: "setup-tilt", change: { value: 0, sd: 0 } },
  },
  "ball-position": ROUGH,
  "shoulder-line": { kind: "line", turns: 1, against: "a stick on the ground" },
  hinge: { kind: "angle", outOfPicture: { value: 35, sd: 8 } },
  "shaft-line": { kind: "line", turns: -1, against: "the picture" },
  "hip-sway": MOVE,
  "tilt-kept": ROUGH,
  "top-tilt": bent({ value: -5, sd: 4 }),
  "head-drift": MOVE,
  "impact-tilt": bent({ value: -5, sd: 5 }),
  "hip-shift": MOVE,
  "shaft-lean": ROUGH,
};

const TIMINGS: Partial<Readonly<Record<BuiltInId, CameraTiming>>> = {
  hinge: { degreesPerSecond: 180, needs: null },
  "impact-tilt": { degreesPerSecond: 150, needs: null },
  "shaft-lean": { degreesPerSecond: 1800, needs: IMPACT_FILM },
};

/** How a fundamental is read off a picture; an academy's own ones are known by their sensitivities alone. */
export function cameraGeometry(fundamental: Fundamental): CameraGeometry {
  return isBuiltInId(fundamental.id) ? GEOMETRIES[fundamental.id] : ROUGH;
}

/** How fast a fundamental moves at its checkpoint; null: slowly, so that the choice of the picture hardly matters. */
export function cameraTiming(fundamental: Fundamental): CameraTiming | null {
  return isBuiltInId(fundamental.id) ? (TIMINGS[fundamental.id] ?? null) : null;
}
