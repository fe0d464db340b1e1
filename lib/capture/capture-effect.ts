import type { Fundamental } from "@/lib/domain/fundamental";
import type { Capture } from "@/lib/domain/session";
import type { FilmFacts } from "./camera-shift";
import type { CaptureEffect, CaptureReason } from "./effect";
import { checkedCaptureSd, misplacementShift, rejection } from "./misplacement";
import { placeWasSeen, sightedEffect, tooSlow } from "./sighted-effect";
import { sightedStand } from "./sighted-stand";
import { standDoubt } from "./stand-doubt";

/** Films of which nothing is known but their camera record. */
export const NO_FACTS: FilmFacts = { readings: new Map(), stanceCm: null, stickInPicture: "not known" };

/**
 * What a session's camera record does to one fundamental: whether the session counts, the sd of its camera error, and what is
 * taken out of its readings.
 *
 * A stated sd wins over whatever the record implies. A place that was looked at: see `sightedEffect`. Square: what a check
 * leaves of yaw, roll and offset, never more than the unknown. Off by about an amount: widened by the whole shift, its side
 * isn't trusted, and set aside beyond the limits. No record, or nobody looked: the fundamental's sd for an unknown placement;
 * it is never zero. A film known to be too slow for the fundamental is set aside.
 *
 * @param capture record of the view from which the fundamental is read; null: none
 * @param film what the session's readings tell; a place that was looked at needs it
 * @throws RangeError when the record is of another view, or a stated sd, amount or sighting is impossible
 *
 * Source: projection geometry at a forward bend of 35 degrees; limits and what a check leaves: common practice.
 */
export function captureEffect(
  capture: Capture | null,
  fundamental: Fundamental,
  film: FilmFacts = NO_FACTS,
): CaptureEffect {
  const unknown = {
    use: true,
    captureSd: fundamental.cameraSdUnknown,
    why: "unknown",
    offBy: null,
    correction: null,
  } as const;
  if (capture === null) return unknown;
  requireCapture(capture, fundamental);
  const captureSd = capture.statedSd ?? fundamental.cameraSdUnknown;
  const plain = (use: boolean, why: CaptureReason, sd = captureSd): CaptureEffect => ({
    use,
    captureSd: sd,
    why,
    offBy: capture.offBy,
    correction: null,
  });
  if (capture.setAsideReason !== null) return plain(false, "set-aside");
  if (tooSlow(fundamental, capture.seen)) return plain(false, "too-slow");
  if (capture.statedSd !== null) return plain(true, "stated");
  if (placeWasSeen(capture.seen)) {
    const stand = sightedStand(capture.view, capture.seen, standDoubt(capture));
    return sightedEffect(fundamental, capture, stand, film);
  }
  if (capture.squareness === "square") return plain(true, "square", checkedCaptureSd(fundamental));
  if (capture.squareness === "unknown" || capture.offBy === null) return unknown;
  const widened = Math.hypot(checkedCaptureSd(fundamental), misplacementShift(fundamental, capture.offBy));
  const rejected = rejection(fundamental, capture.offBy);
  return rejected === null ? plain(true, "off-widened", widened) : plain(false, rejected, widened);
}

function requireCapture(capture: Capture, fundamental: Fundamental): void {
  if (capture.view !== fundamental.view) throw new RangeError(`${fundamental.id} isn't read from ${capture.view}`);
  if (capture.statedSd !== null && !(Number.isFinite(capture.statedSd) && capture.statedSd >= 0))
    throw new RangeError(`stated camera sd: ${capture.statedSd}`);
  if (capture.offBy !== null && !Number.isFinite(capture.offBy)) throw new RangeError(`off by: ${capture.offBy}`);
}
