import { type BuiltInId, isBuiltInId } from "./catalogue";
import type { CameraSensitivity, Fundamental } from "./fundamental";

/** The way a reading goes when the phone stands wrong: 1 up, -1 down, 0 where only the size is known. */
export interface CameraDirection {
  /** Per degree of yaw, the phone too far toward the target. */
  readonly yaw: -1 | 0 | 1;
  /** Per degree of roll that leans everything away from the target, or toward the ball. */
  readonly roll: -1 | 0 | 1;
  /** Per degree under which the phone stands on the ball's side of the line. */
  readonly offset: -1 | 0 | 1;
}

const LEAN: CameraDirection = { yaw: 1, roll: 1, offset: 0 };
const UNSURE: CameraDirection = { yaw: 0, roll: 0, offset: 0 };

/**
 * Derived by projection geometry. The nearer of two points goes away from the target when the phone goes toward it: the
 * neck leans forward of the hips, the club out of the picture's plane, the ball and the clubhead stand nearer the phone
 * than heels and hands. From behind, the club at club-parallel points at the phone and the lead foot and shoulder away
 * from it, so their lines turn opposite ways. Where a grip line or a moving hip goes depends on depth that no still
 * shows: only the size is known.
 */
const DIRECTIONS: Readonly<Record<BuiltInId, CameraDirection>> = {
  "trail-v": UNSURE,
  "lead-v": UNSURE,
  "foot-line": { yaw: 0, roll: 0, offset: 1 },
  "setup-tilt": LEAN,
  "posture-bend": { yaw: 0, roll: 1, offset: 0 },
  "ball-position": { yaw: -1, roll: 0, offset: 0 },
  "shoulder-line": { yaw: 0, roll: 0, offset: 1 },
  hinge: { yaw: 1, roll: 0, offset: 0 },
  "shaft-line": { yaw: 0, roll: 0, offset: -1 },
  "hip-sway": UNSURE,
  "tilt-kept": { yaw: 1, roll: 0, offset: 0 },
  "top-tilt": LEAN,
  "head-drift": UNSURE,
  "impact-tilt": LEAN,
  "hip-shift": UNSURE,
  "shaft-lean": { yaw: 1, roll: -1, offset: 0 },
};

/**
 * The way a fundamental's reading goes when the phone stands wrong.
 *
 * @returns zeros for an academy's own fundamental: nobody has said which way it goes
 */
export function cameraDirection(fundamental: Fundamental): CameraDirection {
  return isBuiltInId(fundamental.id) ? DIRECTIONS[fundamental.id] : UNSURE;
}

/** Sensitivities with their signs: 0 where only the size is known. */
export function signedSensitivity(fundamental: Fundamental): CameraSensitivity {
  const direction = cameraDirection(fundamental);
  const { yaw, roll, offset } = fundamental.sensitivity;
  return { yaw: direction.yaw * yaw, roll: direction.roll * roll, offset: direction.offset * offset };
}
