import type { Fundamental } from "@/lib/domain/fundamental";
import type { Capture } from "@/lib/domain/session";

/** Sd of what is left of a wrong yaw after a check against sticks, degrees. Common practice, no source. */
export const CHECKED_YAW_SD = 1;

/** Sd of what is left of a roll after a check against a plumb line, degrees. Common practice, no source. */
export const CHECKED_ROLL_SD = 0.5;

/** Sds of a placement that nobody looked at, degrees: yaw; roll; angle of 15 cm beside the line at 4 m. Common practice, no source. */
export const UNKNOWN_YAW_SD = 4;
export const UNKNOWN_ROLL_SD = 1;
export const UNKNOWN_OFFSET_SD = 2.1;

/** Sd of the angle of what is left of a sideways offset after a check: 4 cm at 4 m, degrees. Common practice, no source. */
export const CHECKED_OFFSET_SD = 0.6;

/** Distance from the golfer at which a sideways offset down the line is turned into an angle, cm. */
export const OFFSET_DISTANCE_CM = 400;

/** Sensitivity from which on a fundamental counts as moved by that kind of misplacement. */
export const HIGH_SENSITIVITY = 0.5;

/** Yaw beyond which a fundamental of high yaw sensitivity is set aside, degrees. Common practice, no source. */
export const YAW_REJECT_HIGH = 10;

/** Yaw beyond which any face-on fundamental is set aside, degrees. Common practice, no source. */
export const YAW_REJECT_ANY = 15;

/** Sideways offset beyond which a fundamental of high offset sensitivity is set aside, cm. Common practice, no source. */
export const OFFSET_REJECT_CM = 35;

/** Why a session's camera sd is what it is, or why the session doesn't count. */
export type CaptureReason =
  | "stated"
  | "unknown"
  | "square"
  | "off-widened"
  | "set-aside"
  | "yaw-too-large"
  | "offset-too-large";

/** What a camera record does to one fundamental of its session. */
export interface CaptureEffect {
  /** False: set aside before judging. */
  readonly use: boolean;
  /** Sd of the camera error shared by the session's swings, in the fundamental's unit; more than 0 unless stated so. */
  readonly captureSd: number;
  readonly why: CaptureReason;
}

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

/**
 * What a session's camera record does to one fundamental: whether the session counts, and the sd of its camera error.
 *
 * A stated sd wins over whatever the record implies. Square: what a check leaves of yaw, roll and offset, never more
 * than the unknown. Off by a known amount: widened by the whole shift, and set aside beyond the limits above. No record,
 * or nobody looked: the fundamental's sd for an unknown placement; it is never zero.
 *
 * @param capture record of the view from which the fundamental is read; null: none
 * @throws RangeError when the record is of another view, or a stated sd or amount is not a finite number or negative sd
 *
 * Source: projection geometry at a forward bend of 35 degrees; limits and what a check leaves: common practice.
 */
export function captureEffect(capture: Capture | null, fundamental: Fundamental): CaptureEffect {
  const unknown = { use: true, captureSd: fundamental.cameraSdUnknown, why: "unknown" } as const;
  if (capture === null) return unknown;
  if (capture.view !== fundamental.view) throw new RangeError(`${fundamental.id} isn't read from ${capture.view}`);
  if (capture.statedSd !== null && !(Number.isFinite(capture.statedSd) && capture.statedSd >= 0))
    throw new RangeError(`stated camera sd: ${capture.statedSd}`);
  if (capture.offBy !== null && !Number.isFinite(capture.offBy)) throw new RangeError(`off by: ${capture.offBy}`);
  const captureSd = capture.statedSd ?? fundamental.cameraSdUnknown;
  if (capture.setAsideReason !== null) return { use: false, captureSd, why: "set-aside" };
  if (capture.statedSd !== null) return { use: true, captureSd, why: "stated" };
  if (capture.squareness === "square") return { use: true, captureSd: checkedCaptureSd(fundamental), why: "square" };
  if (capture.squareness === "unknown" || capture.offBy === null) return unknown;
  const widened = Math.hypot(checkedCaptureSd(fundamental), misplacementShift(fundamental, capture.offBy));
  const rejected = rejection(fundamental, capture.offBy);
  if (rejected !== null) return { use: false, captureSd: widened, why: rejected };
  return { use: true, captureSd: widened, why: "off-widened" };
}
