import { radians, type Stand } from "./stand";

/** A direction in a picture's own frame (see `Stand`); any length. */
export interface Direction {
  readonly across: number;
  readonly up: number;
  readonly toPhone: number;
}

/** A direction as a picture shows it: across and up; the length is that of its projection. */
export interface SeenDirection {
  readonly across: number;
  readonly up: number;
}

/**
 * A direction as it looks in the picture of a phone that stands off.
 *
 * Far away from the phone compared with its own size, so without perspective: over a body's length at two to six metres
 * perspective changes a lean of 7 degrees by .04 to .12 (checked by a projection with perspective in the tests).
 *
 * Source: orthographic projection; Hartley, R. & Zisserman, A. (2003), Multiple View Geometry, 6.3.
 */
export function seenDirection({ across, up, toPhone }: Direction, { yaw, pitch, roll }: Stand): SeenDirection {
  const [cosYaw, sinYaw] = [Math.cos(radians(yaw)), Math.sin(radians(yaw))];
  const [cosPitch, sinPitch] = [Math.cos(radians(pitch)), Math.sin(radians(pitch))];
  const x = across * cosYaw + toPhone * sinYaw;
  const y = across * sinYaw * sinPitch + up * cosPitch - toPhone * cosYaw * sinPitch;
  const [cosRoll, sinRoll] = [Math.cos(radians(roll)), Math.sin(radians(roll))];
  return { across: x * cosRoll + y * sinRoll, up: y * cosRoll - x * sinRoll };
}
