import { USUAL_LENS_CM } from "./camera-limits";
import { acrossSlope, pointingLean } from "./sighted-stand";

/** What a stick shows of a phone off to the side. */
export interface StickWorth {
  /** Degrees of yaw that one degree of a stick's lean or slope stands for, near the right place. */
  readonly pointing: number;
  readonly across: number;
  /** By how much the stick that points at the phone is better, at equal reading. */
  readonly times: number;
}

/**
 * Which stick shows the phone's place better, and by how much: (distance / lens height) squared.
 *
 * @param distanceCm from phone to student
 * @param lensCm height of the lens; both above 0
 *
 * Source: slopes of `pointingLean` and `acrossSlope` at no yaw.
 */
export function stickWorth(distanceCm: number, lensCm: number = USUAL_LENS_CM.value): StickWorth {
  if (!(distanceCm > 0 && lensCm > 0)) throw new RangeError(`lengths are above 0, got ${distanceCm} and ${lensCm}`);
  const little = 1e-3;
  return {
    pointing: little / pointingLean(little, distanceCm, lensCm),
    across: little / acrossSlope(little, distanceCm, lensCm),
    times: (distanceCm / lensCm) ** 2,
  };
}
