import { type CameraGeometry, cameraGeometry, type Doubted, type LeanToPhone } from "@/lib/domain/camera-geometry";
import { findFundamental } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { firstOrderSpread } from "@/lib/stats/first-order-spread";
import {
  CHECKED_OFFSET_SD,
  DISTANCE_ACCEPT_CM,
  HIPS_BEHIND_FEET_CM,
  PITCH_ACCEPT,
  PITCH_ANGLE_PER_DEGREE,
  USUAL_STANCE_CM,
} from "./camera-limits";
import { trueHinge } from "./seen-hinge";
import { trueLean } from "./seen-lean";
import { moveLeak, sizeShown } from "./seen-move";
import type { Stand, StandBelief } from "./stand";

/** What a session tells of the bodies in its films. */
export interface FilmFacts {
  /** Middle reading of the session's swings by fundamental, as read, both views. */
  readonly readings: ReadonlyMap<string, number>;
  readonly stanceCm: number | null;
  /** Whether a stick lay along the target line in the picture that is read down the line. */
  readonly stickInPicture: "yes" | "not known";
}

/** What a phone's place does to one fundamental, as far as it is known. */
export interface CameraShift {
  /** How far a reading is off, reading less truth, in the fundamental's unit; 0 where only the size is known. */
  readonly shift: number;
  /** Sd of what is left once the shift is taken out. */
  readonly sd: number;
  /**
   * What a reading would be with a phone in its place; null: the shift can't be taken out reading by reading. `parts` are the
   * readings of which a difference is made, where there are any.
   */
  readonly truthOf: ((reading: number, parts: readonly [number, number] | null) => number) | null;
}

/** Sd of a reading of the lean toward the phone from the other view, degrees; common practice, no source. */
const READ_LEAN_SD = 3;

const rms = ({ value, sd }: Doubted): number => Math.hypot(value, sd);

/**
 * What a phone's place, known as far as it is, does to a fundamental's readings of one session.
 *
 * Leans and lines are worked out; a club that leans out of the picture by nobody knows how much isn't taken out; of ways
 * sideways and of grip lines only the size is known. A difference of two leans shares yaw, roll and the bend at setup of
 * both, so that roll cancels and yaw nearly does. Where nobody read the fundamental the middle of its goal stands in.
 *
 * @param stand of the fundamental's view
 *
 * Source: projection geometry with first-order spread; bends and depths: common practice.
 */
export function cameraShift(fundamental: Fundamental, stand: StandBelief, film: FilmFacts): CameraShift {
  const parts = leanParts(fundamental);
  if (parts) return differenceShift(fundamental, parts, stand, film);
  const geometry = cameraGeometry(fundamental);
  const reading = readingOf(fundamental, film);
  switch (geometry.kind) {
    case "lean":
      return leanShift(reading, geometry.toPhone, stand, film);
    case "angle":
      return angleShift(reading, geometry.outOfPicture, stand);
    case "move":
      return { shift: 0, sd: moveDoubt(fundamental, reading, geometry.towardPhoneSdCm, stand, film), truthOf: null };
    case "line":
      return lineShift(geometry, stand, film);
    default: {
      const { yaw, roll, offset } = fundamental.sensitivity;
      const side = fundamental.view === "face-on" ? yaw : offset;
      return { shift: 0, sd: Math.hypot(side * rms(stand.yaw), roll * rms(stand.roll)), truthOf: null };
    }
  }
}

function readingOf(fundamental: Fundamental, { readings }: FilmFacts): number {
  const known = readings.get(fundamental.id);
  if (known !== undefined) return known;
  const { low, high } = fundamental.goals.iron;
  if (low !== null && high !== null) return (low + high) / 2;
  const inward = INWARD * fundamental.readerSd;
  if (low !== null) return low + inward;
  if (high !== null) return high - inward;
  return (fundamental.plausible.low + fundamental.plausible.high) / 2;
}

/** How far inside a goal of one edge a usual reading lies, in reader sds; own choice. */
const INWARD = 3;

/** The two leans of which a fundamental is the difference; null: it isn't one. */
function leanParts({ derivedFrom }: Fundamental): readonly [LeanPart, LeanPart] | null {
  const parts = derivedFrom?.flatMap((id) => {
    const fundamental = findFundamental(id, []);
    const geometry: CameraGeometry | null = fundamental ? cameraGeometry(fundamental) : null;
    return fundamental && geometry?.kind === "lean" ? [{ fundamental, toPhone: geometry.toPhone }] : [];
  });
  return parts?.length === 2 ? [parts[0] as LeanPart, parts[1] as LeanPart] : null;
}

interface LeanPart {
  readonly fundamental: Fundamental;
  readonly toPhone: LeanToPhone;
}

/** The lean toward the phone at setup: as the other view has it, or as usual. */
function leanAtSetup({ usual, readBy }: LeanToPhone, { readings }: FilmFacts): Doubted {
  const read = readings.get(readBy);
  return read === undefined ? usual : { value: read, sd: Math.min(READ_LEAN_SD, usual.sd) };
}

/** Means and covariance of the place (yaw, roll, pitch), and after it of independent leans. */
function beliefs(stand: StandBelief, leans: readonly Doubted[]): readonly [number[], number[][]] {
  const all = [stand.yaw, stand.roll, stand.pitch, ...leans];
  const covariance = all.map((each, i) => all.map((_, k) => (i === k ? each.sd ** 2 : 0)));
  (covariance[0] as number[])[1] = stand.yawRoll;
  (covariance[1] as number[])[0] = stand.yawRoll;
  return [all.map((each) => each.value), covariance];
}

function standOf([yaw, roll, pitch]: readonly number[]): Stand {
  return { yaw: yaw as number, roll: roll as number, pitch: pitch as number };
}

function leanShift(reading: number, toPhone: LeanToPhone, stand: StandBelief, film: FilmFacts): CameraShift {
  const [means, covariance] = beliefs(stand, [leanAtSetup(toPhone, film), toPhone.change]);
  const truth = (seen: number, at: readonly number[]): number =>
    trueLean(seen, (at[3] as number) + (at[4] as number), standOf(at));
  const { value, sd } = firstOrderSpread((at) => truth(reading, at), means, covariance);
  return { shift: reading - value, sd, truthOf: (seen) => truth(seen, means) };
}

function differenceShift(
  fundamental: Fundamental,
  [late, early]: readonly [LeanPart, LeanPart],
  stand: StandBelief,
  film: FilmFacts,
): CameraShift {
  const [means, covariance] = beliefs(stand, [
    leanAtSetup(early.toPhone, film),
    late.toPhone.change,
    early.toPhone.change,
  ]);
  const truth = (seen: readonly [number, number], at: readonly number[]): number =>
    trueLean(seen[0], (at[3] as number) + (at[4] as number), standOf(at)) -
    trueLean(seen[1], (at[3] as number) + (at[5] as number), standOf(at));
  const first = readingOf(early.fundamental, film);
  const difference = film.readings.get(fundamental.id);
  const second = difference === undefined ? readingOf(late.fundamental, film) : first + difference;
  const { value, sd } = firstOrderSpread((at) => truth([second, first], at), means, covariance);
  const shift = second - first - value;
  return { shift, sd, truthOf: (seen, parts) => (parts === null ? seen - shift : truth(parts, means)) };
}

function angleShift(reading: number, outOfPicture: Doubted, stand: StandBelief): CameraShift {
  const all = [stand.yaw, outOfPicture];
  const covariance = all.map((each, i) => all.map((_, k) => (i === k ? each.sd ** 2 : 0)));
  const { value, sd } = firstOrderSpread(
    ([yaw, out]) => trueHinge(reading, out as number, yaw as number),
    all.map((each) => each.value),
    covariance,
  );
  const pitched = PITCH_ANGLE_PER_DEGREE * Math.max(0, Math.abs(stand.pitch.value) - PITCH_ACCEPT);
  return { shift: reading - value, sd: Math.hypot(sd, pitched), truthOf: null };
}

function lineShift(
  { turns, against }: Extract<CameraGeometry, { kind: "line" }>,
  { yaw }: StandBelief,
  film: FilmFacts,
): CameraShift {
  if (against === "a stick on the ground" && film.stickInPicture === "yes")
    return { shift: 0, sd: Math.hypot(CHECKED_OFFSET_SD, LEFT_BESIDE_STICK * yaw.value), truthOf: null };
  // A phone on the ball's side stands at larger x, so its yaw counts the other way.
  const shift = -turns * yaw.value;
  return { shift, sd: yaw.sd, truthOf: (seen) => seen - shift };
}

/** The share of an offset's angle that stays in a line read against a stick beside it; own choice. */
const LEFT_BESIDE_STICK = 0.15;

function moveDoubt(
  { sensitivity }: Fundamental,
  reading: number,
  towardPhoneSdCm: number,
  stand: StandBelief,
  film: FilmFacts,
): number {
  const leak = moveLeak(towardPhoneSdCm, film.stanceCm ?? USUAL_STANCE_CM, rms(stand.yaw));
  const { value: distanceCm } = stand.distanceCm;
  const near =
    distanceCm < DISTANCE_ACCEPT_CM ? (1 - sizeShown(HIPS_BEHIND_FEET_CM, distanceCm)) * Math.abs(reading) : 0;
  return Math.hypot(leak, sensitivity.roll * rms(stand.roll), near);
}
