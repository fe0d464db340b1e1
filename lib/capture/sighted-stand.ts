import type { Doubted } from "@/lib/domain/camera-geometry";
import type { View } from "@/lib/domain/fundamental";
import type { CaptureSightings } from "@/lib/domain/session";
import { householderQr } from "@/lib/stats/householder-qr";
import {
  ACROSS_STICK_SD,
  LOOKED_AT_YAW_SD,
  MEASURED_BESIDE_SD_CM,
  MEASURED_HEIGHT_SD_CM,
  PACED_SHARE_SD,
  PLUMB_SD,
  POINTING_STICK_SD,
  UNKNOWN_OFFSET_SD,
  UNKNOWN_PITCH_SD,
  UNKNOWN_ROLL_SD,
  UNKNOWN_YAW_SD,
  USUAL_DISTANCE_CM,
  USUAL_DISTANCE_SHARE_SD,
  USUAL_HANDS_CM,
  USUAL_LENS_CM,
} from "./camera-limits";
import { degrees, radians, type StandBelief } from "./stand";

/** What is believed of yaw and roll before anything was seen, degrees; both about 0. */
export interface StandDoubt {
  readonly yawSd: number;
  readonly rollSd: number;
}

/** The doubt about a phone whose place nobody looked at. */
export function unknownStand(view: View): StandDoubt {
  return { yawSd: view === "face-on" ? UNKNOWN_YAW_SD : UNKNOWN_OFFSET_SD, rollSd: UNKNOWN_ROLL_SD };
}

/** Yaw, roll, log of the distance, lens height: what the sightings depend on together. */
type Unknowns = readonly [yaw: number, roll: number, logDistance: number, lens: number];

interface Equation {
  /** What was seen less what these unknowns would show, in sds. */
  readonly misfit: (at: Unknowns) => number;
}

/** Rounds of linearising: from the start, three are enough for ten digits. */
const ROUNDS = 12;
const STEPS: Unknowns = [1e-4, 1e-4, 1e-6, 1e-3];

/**
 * Where the phone stood, from what was seen in the picture and measured on the ground.
 *
 * The stick that points at the phone leans by tan lean = (distance / lens height) tan yaw, the one across slopes by
 * tan slope = (lens height / distance) tan yaw, both less the roll; something upright shows the roll; a way beside the
 * line is distance x tan yaw. All are weighed together with what is believed of a phone that nobody looked at, by least
 * squares, so that one sighting makes another worth more; a stick that points at the phone, or a measured way, has the word
 * against that belief. Pitch follows from the heights of lens and hands.
 *
 * @param doubt before anything was seen
 * @returns means, sds and the covariance of yaw and roll, to first order; nothing seen: the doubt itself
 * @throws RangeError on lengths that aren't above 0, or leans and slopes of 90 degrees or more
 *
 * Source: projection of a line on the ground; Gauss-Newton, Björck, Å. (1996), Numerical Methods for Least Squares, 9.2.
 */
export function sightedStand(view: View, seen: CaptureSightings, doubt: StandDoubt): StandBelief {
  requireSightings(seen);
  const usualDistance = USUAL_DISTANCE_CM[view];
  const distance = logDoubt(seen.distanceCm, usualDistance);
  const lens = measured(seen.lensHeightCm, USUAL_LENS_CM);
  const lookedAt = seen.pointingStickLean !== null || seen.besideHandsCm !== null;
  const equations = [
    equation(([yaw]) => yaw, 0, lookedAt ? LOOKED_AT_YAW_SD : doubt.yawSd),
    equation(([, roll]) => roll, 0, doubt.rollSd),
    equation(([, , logDistance]) => logDistance, distance.value, distance.sd),
    equation(([, , , height]) => height, lens.value, lens.sd),
    ...sightings(view, seen),
  ];
  const start: Unknowns = [startYaw(view, seen, distance, lens), seen.plumbLean ?? 0, distance.value, lens.value];
  const { at, covariance } = solved(equations, start);
  const sd = (row: number): number => Math.sqrt((covariance[row] as number[])[row] as number);
  const distanceCm = { value: Math.exp(at[2]), sd: Math.exp(at[2]) * sd(2) };
  return {
    yaw: { value: at[0], sd: sd(0) },
    roll: { value: at[1], sd: sd(1) },
    yawRoll: (covariance[0] as number[])[1] as number,
    pitch: pitchOf(seen, { value: at[3], sd: sd(3) }, distanceCm),
    distanceCm,
  };
}

function equation(shown: (at: Unknowns) => number, wanted: number, sd: number): Equation {
  return { misfit: (at) => (wanted - shown(at)) / sd };
}

/** What was seen of the place itself, one equation a sighting. */
function sightings(view: View, seen: CaptureSightings): readonly Equation[] {
  // Down the line the signs of the pointing stick and of a way beside the line count from the ball's side.
  const side = view === "face-on" ? 1 : -1;
  const found: Equation[] = [];
  if (seen.pointingStickLean !== null)
    found.push(
      equation(
        ([yaw, roll, far, height]) => pointingLean(yaw, Math.exp(far), height) - roll,
        side * seen.pointingStickLean,
        POINTING_STICK_SD,
      ),
    );
  if (seen.acrossStickSlope !== null)
    found.push(
      equation(
        ([yaw, roll, far, height]) => acrossSlope(yaw, Math.exp(far), height) - roll,
        seen.acrossStickSlope,
        ACROSS_STICK_SD,
      ),
    );
  if (seen.plumbLean !== null) found.push(equation(([, roll]) => roll, seen.plumbLean, PLUMB_SD));
  if (seen.besideHandsCm !== null)
    found.push(
      equation(
        ([yaw, , far]) => Math.exp(far) * Math.tan(radians(yaw)),
        side * seen.besideHandsCm,
        MEASURED_BESIDE_SD_CM,
      ),
    );
  return found;
}

/** Lean from the vertical of a stick that points from the student at the place where the phone should be, degrees. */
export function pointingLean(yaw: number, distanceCm: number, lensCm: number): number {
  return degrees(Math.atan((distanceCm / lensCm) * Math.tan(radians(yaw))));
}

/** Slope of a stick that lies across the picture, degrees. */
export function acrossSlope(yaw: number, distanceCm: number, lensCm: number): number {
  return degrees(Math.atan((lensCm / distanceCm) * Math.tan(radians(yaw))));
}

function startYaw(view: View, seen: CaptureSightings, distance: Doubted, lens: Doubted): number {
  const side = view === "face-on" ? 1 : -1;
  const far = Math.exp(distance.value);
  if (seen.besideHandsCm !== null) return degrees(Math.atan((side * seen.besideHandsCm) / far));
  if (seen.pointingStickLean === null) return 0;
  return degrees(Math.atan((lens.value / far) * Math.tan(radians(side * seen.pointingStickLean))));
}

function solved(
  equations: readonly Equation[],
  start: Unknowns,
): { readonly at: Unknowns; readonly covariance: readonly (readonly number[])[] } {
  let at: Unknowns = start;
  let inverse: readonly number[][] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const misfits = equations.map((each) => each.misfit(at));
    const design = at.map((value, column) => {
      const step = STEPS[column] as number;
      const moved = (by: number): Unknowns => at.map((each, i) => (i === column ? value + by : each)) as never;
      return equations.map((each) => (each.misfit(moved(-step)) - each.misfit(moved(step))) / (2 * step));
    });
    const factored = householderQr(design);
    const by = factored.solve(misfits);
    inverse = factored.inverse;
    at = at.map((value, i) => value + within(by[i] as number, REACH[i] as number)) as never;
  }
  const covariance = inverse.map((row) =>
    inverse.map((other) => row.reduce((sum, value, k) => sum + value * (other[k] as number), 0)),
  );
  return { at, covariance };
}

function within(step: number, reach: number): number {
  return Math.max(-reach, Math.min(reach, step));
}

/** No step goes farther than this, so that a tangent is never followed over its pole. */
const REACH: Unknowns = [10, 10, 0.3, 30];

function pitchOf(seen: CaptureSightings, lens: Doubted, distance: Doubted): Doubted {
  if (seen.lensHeightCm === null) return { value: 0, sd: UNKNOWN_PITCH_SD };
  const hands = measured(seen.handsHeightCm, USUAL_HANDS_CM);
  const above = lens.value - hands.value;
  const slope = 1 / (1 + (above / distance.value) ** 2) / distance.value;
  const sd = Math.hypot(lens.sd, hands.sd, (above / distance.value) * distance.sd) * slope;
  return { value: degrees(Math.atan(above / distance.value)), sd: degrees(sd) };
}

function measured(cm: number | null, usual: Doubted): Doubted {
  return cm === null ? usual : { value: cm, sd: MEASURED_HEIGHT_SD_CM };
}

function logDoubt(cm: number | null, usual: number): Doubted {
  return { value: Math.log(cm ?? usual), sd: cm === null ? USUAL_DISTANCE_SHARE_SD : PACED_SHARE_SD };
}

function requireSightings(seen: CaptureSightings): void {
  for (const name of ["lensHeightCm", "handsHeightCm", "distanceCm"] as const) {
    const cm = seen[name];
    if (cm !== null && !(cm > 0 && Number.isFinite(cm))) throw new RangeError(`${name} must be above 0, got ${cm}`);
  }
  for (const name of ["pointingStickLean", "acrossStickSlope", "plumbLean"] as const) {
    const angle = seen[name];
    if (angle !== null && !(Math.abs(angle) < 90)) throw new RangeError(`${name} must be within 90, got ${angle}`);
  }
  if (seen.besideHandsCm !== null && !Number.isFinite(seen.besideHandsCm))
    throw new RangeError(`besideHandsCm must be a number, got ${seen.besideHandsCm}`);
}
