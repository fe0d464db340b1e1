import { cameraGeometry, cameraTiming } from "@/lib/domain/camera-geometry";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Capture, CaptureSightings } from "@/lib/domain/session";
import { DISTANCE_REJECT_CM, LINE_NEEDS_STICK_CM, PITCH_REJECT_ANGLE } from "./camera-limits";
import { type CameraShift, cameraShift, type FilmFacts } from "./camera-shift";
import type { CaptureEffect, CaptureReason } from "./effect";
import { rejection } from "./misplacement";
import type { StandBelief } from "./stand";
import { radians } from "./stand";

/** Whether anything was seen of the phone's place; how fast it filmed says nothing of that. */
export function placeWasSeen(seen: CaptureSightings): boolean {
  const { framesPerSecond: _frames, shutterPerSecond: _shutter, ...place } = seen;
  return Object.values(place).some((value) => value !== null);
}

/** Whether the film is known to be too slow, or its shutter too long, for the fundamental to be read. */
export function tooSlow(fundamental: Fundamental, seen: CaptureSightings): boolean {
  const needs = cameraTiming(fundamental)?.needs ?? null;
  if (needs === null) return false;
  const below = (known: number | null, least: number): boolean => known !== null && known < least;
  return below(seen.framesPerSecond, needs.framesPerSecond) || below(seen.shutterPerSecond, needs.shutterPerSecond);
}

/**
 * What a phone's place that was looked at does to one fundamental.
 *
 * A shift is taken out where it can be and is no smaller than the doubt that this leaves: less would trade one error for
 * another. What isn't taken out is doubt.
 *
 * @param capture record of the fundamental's view
 * @param stand what its sightings say (`sightedStand`)
 *
 * Source: limits are common practice (see `camera-limits`); the rule for taking out is our own: it never raises the error's
 * mean square.
 */
export function sightedEffect(
  fundamental: Fundamental,
  capture: Pick<Capture, "seen">,
  stand: StandBelief,
  film: FilmFacts,
): CaptureEffect {
  const found = cameraShift(fundamental, stand, film);
  const earned = found.truthOf !== null && Math.abs(found.shift) >= found.sd;
  const left = earned ? found.sd : Math.hypot(found.shift, found.sd);
  // Of a place that was looked at something is always left.
  const captureSd = Math.max(left, LEAST_SHARE * fundamental.cameraSdUnknown);
  const besideCm = stand.distanceCm.value * Math.tan(radians(stand.yaw.value));
  const offBy = fundamental.view === "face-on" ? stand.yaw.value : -besideCm;
  const rejected = sightedRejection(fundamental, capture.seen, stand, film);
  if (rejected !== null) return { use: false, captureSd, why: rejected, offBy, correction: null };
  if (!earned) return { use: true, captureSd, why: "sighted", offBy, correction: null };
  const truthOf = found.truthOf as NonNullable<CameraShift["truthOf"]>;
  return { use: true, captureSd, why: "corrected", offBy, correction: { shift: found.shift, truthOf } };
}

/** The least camera sd of a place that was looked at, as a share of the unknown's; own choice: never zero. */
const LEAST_SHARE = 0.1;

function sightedRejection(
  fundamental: Fundamental,
  seen: CaptureSightings,
  { yaw, pitch, distanceCm }: StandBelief,
  film: FilmFacts,
): CaptureReason | null {
  if (seen.distanceCm !== null && seen.distanceCm < DISTANCE_REJECT_CM) return "too-near";
  const geometry = cameraGeometry(fundamental);
  if (geometry.kind === "angle" && seen.lensHeightCm !== null && Math.abs(pitch.value) > PITCH_REJECT_ANGLE)
    return "pitch-too-large";
  if (fundamental.view === "face-on") return rejection(fundamental, yaw.value);
  const besideCm = Math.abs(distanceCm.value * Math.tan(radians(yaw.value)));
  if (geometry.kind === "line" && geometry.against === "a stick on the ground") {
    if (film.stickInPicture === "yes") return null;
    if (besideCm > LINE_NEEDS_STICK_CM) return "no-stick";
  }
  return rejection(fundamental, besideCm);
}
