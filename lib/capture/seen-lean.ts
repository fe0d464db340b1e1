import { seenDirection } from "./seen-direction";
import { degrees, radians, type Stand } from "./stand";

/**
 * The lean from the vertical that a picture shows of a line, degrees, + to larger x.
 *
 * `lean`: the line's true lean seen square; `toPhone`: its lean toward the phone; both from the vertical, less than 90
 * either way. A phone off to the side lets the lean toward the phone in: tan seen = tan lean cos yaw + tan toPhone sin yaw.
 *
 * Source: projection geometry, see `seenDirection`.
 */
export function seenLean(lean: number, toPhone: number, stand: Stand): number {
  const line = { across: Math.tan(radians(lean)), up: 1, toPhone: Math.tan(radians(toPhone)) };
  const seen = seenDirection(line, stand);
  return degrees(Math.atan2(seen.across, seen.up));
}

/**
 * The true lean of a line of which a picture shows `seen`: the inverse of `seenLean`, degrees from -90 to 90.
 *
 * Source: the projection solved for the lean; without pitch and roll tan lean = (tan seen - tan toPhone sin yaw) / cos yaw.
 */
export function trueLean(seen: number, toPhone: number, { yaw, pitch, roll }: Stand): number {
  const turned = radians(seen - roll);
  const [s, c] = [Math.sin(turned), Math.cos(turned)];
  const [cosYaw, sinYaw] = [Math.cos(radians(yaw)), Math.sin(radians(yaw))];
  const [cosPitch, sinPitch] = [Math.cos(radians(pitch)), Math.sin(radians(pitch))];
  const leak = Math.tan(radians(toPhone));
  const rise = s * (cosPitch - leak * cosYaw * sinPitch) - c * leak * sinYaw;
  const run = c * cosYaw - s * sinYaw * sinPitch;
  return degrees(Math.atan(rise / run));
}
