import type { Fundamental } from "@/lib/domain/fundamental";
import {
  CHECKED_OFFSET_SD,
  CHECKED_ROLL_SD,
  CHECKED_YAW_SD,
  HIGH_SENSITIVITY,
  OFFSET_DISTANCE_CM,
  OFFSET_REJECT_CM,
  YAW_REJECT_ANY,
  YAW_REJECT_HIGH,
} from "./camera-limits";
import type { CaptureReason } from "./effect";

/** Sd of the camera error that a check leaves, in the fundamental's unit; never more than when nobody looked. */
export function checkedCaptureSd(fundamental: Fundamental): number {
  const { yaw, roll, offset } = fundamental.sensitivity;
  const left = Math.hypot(yaw * CHECKED_YAW_SD, roll * CHECKED_ROLL_SD, offset * CHECKED_OFFSET_SD);
  return Math.min(left, fundamental.cameraSdUnknown);
}

/**
 * Why a phone that stood off by that much sets a fundamental aside; null: the film bears it.
 *
 * @param offBy degrees of yaw face-on, centimetres beside the line down the line; its sign doesn't matter
 */
export function rejection(fundamental: Fundamental, offBy: number): CaptureReason | null {
  const amount = Math.abs(offBy);
  if (fundamental.view === "face-on") {
    const limit = fundamental.sensitivity.yaw >= HIGH_SENSITIVITY ? YAW_REJECT_HIGH : YAW_REJECT_ANY;
    return amount > limit ? "yaw-too-large" : null;
  }
  const high = fundamental.sensitivity.offset >= HIGH_SENSITIVITY;
  return high && amount > OFFSET_REJECT_CM ? "offset-too-large" : null;
}

/** The angle under which a phone so many centimetres beside the line sees it, degrees. */
export function offsetAngle(centimetres: number): number {
  return (Math.atan(centimetres / OFFSET_DISTANCE_CM) * 180) / Math.PI;
}

/** How many centimetres beside the line an angle of the offset means, at the usual distance. */
export function offsetCentimetres(angle: number): number {
  return OFFSET_DISTANCE_CM * Math.tan((angle * Math.PI) / 180);
}

/** How far a misplacement may have moved a reading, in the fundamental's unit; its sign isn't trusted. `offBy` as in `rejection`. */
export function misplacementShift(fundamental: Fundamental, offBy: number): number {
  if (fundamental.view === "face-on") return fundamental.sensitivity.yaw * offBy;
  return fundamental.sensitivity.offset * offsetAngle(offBy);
}
