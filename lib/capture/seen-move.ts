import { radians } from "./stand";

/**
 * How far a way sideways, in % of the stance, reads too large when the student also moved toward the phone.
 *
 * `towardPhoneCm`: that way; `stanceCm`: heel to heel, more than 0; `yaw`: see `Stand`. What a phone off to the side
 * shortens, it shortens in way and stance alike, so only the way toward the phone is let in.
 *
 * Source: projection geometry; 100 (way / stance) tan yaw.
 */
export function moveLeak(towardPhoneCm: number, stanceCm: number, yaw: number): number {
  if (!(stanceCm > 0)) throw new RangeError(`a stance is wider than 0 cm, got ${stanceCm}`);
  return ((100 * towardPhoneCm) / stanceCm) * Math.tan(radians(yaw));
}

/**
 * The share of a way's true size that a phone at this distance shows, when the mover is farther off than the feet.
 *
 * `behindFeetCm`: how much farther; `distanceCm`: from phone to feet, more than 0. Source: central projection, D / (D + d).
 */
export function sizeShown(behindFeetCm: number, distanceCm: number): number {
  if (!(distanceCm > 0)) throw new RangeError(`a phone is farther than 0 cm away, got ${distanceCm}`);
  return distanceCm / (distanceCm + behindFeetCm);
}
