import type { Doubted } from "@/lib/domain/camera-geometry";

/**
 * Where the phone stands, degrees, in a picture's own frame: x across the picture, + away from the target face-on and
 * toward the ball down the line; y up; z from the student to a phone that stands as it should.
 */
export interface Stand {
  /** Angle of the line from student to phone off its place: + with the phone at smaller x, so toward the target, or behind the student's heels. */
  readonly yaw: number;
  /** + with the phone higher than the hands. */
  readonly pitch: number;
  /** + where upright things lean to larger x in the picture. */
  readonly roll: number;
}

/** A phone that stands as it should. */
export const SQUARE: Stand = { yaw: 0, pitch: 0, roll: 0 };

/** What is believed of where the phone stood. */
export interface StandBelief {
  readonly yaw: Doubted;
  readonly pitch: Doubted;
  readonly roll: Doubted;
  /** Covariance of yaw and roll, degrees squared: a stick's lean shows both at once. */
  readonly yawRoll: number;
  readonly distanceCm: Doubted;
}

/** Degrees as radians. */
export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Radians as degrees. */
export function degrees(angle: number): number {
  return (angle * 180) / Math.PI;
}
