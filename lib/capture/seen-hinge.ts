import { degrees, radians } from "./stand";

/**
 * The angle between a level arm and the club that a picture shows, degrees: 0 straight on, 90 square.
 *
 * `hinge`: the angle seen square, 0 to 180. `outOfPicture`: how far the club leans out of the picture's plane, away from
 * the phone, degrees, less than 90. `yaw`: see `Stand`. The arm lies in the plane; roll cancels, and so does pitch for a
 * hinge of 90.
 *
 * Source: projection of both segments; at a hinge of 90 seen - hinge = atan(tan outOfPicture sin yaw).
 */
export function seenHinge(hinge: number, outOfPicture: number, yaw: number): number {
  const across = Math.cos(radians(hinge)) * Math.cos(radians(yaw)) - leak(outOfPicture, yaw);
  return degrees(Math.atan2(Math.sin(radians(hinge)), across));
}

/** The true hinge behind a seen one: the inverse of `seenHinge`, degrees. */
export function trueHinge(seen: number, outOfPicture: number, yaw: number): number {
  const turned = radians(seen);
  const sine = Math.sin(turned) * Math.cos(radians(yaw));
  const cosine = Math.cos(turned);
  const part = (leak(outOfPicture, yaw) * Math.sin(turned)) / Math.hypot(sine, cosine);
  return degrees(Math.atan2(sine, cosine) - Math.asin(Math.max(-1, Math.min(1, part))));
}

function leak(outOfPicture: number, yaw: number): number {
  return Math.tan(radians(outOfPicture)) * Math.sin(radians(yaw));
}
