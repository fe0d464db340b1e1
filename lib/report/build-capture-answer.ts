import { USUAL_DISTANCE_CM } from "@/lib/capture/camera-limits";
import { captureEffect, NO_FACTS } from "@/lib/capture/capture-effect";
import type { CaptureEffect } from "@/lib/capture/effect";
import { blurDegrees, timingSd } from "@/lib/capture/frame-timing";
import { checkedCaptureSd } from "@/lib/capture/misplacement";
import { nextPlacement } from "@/lib/capture/next-placement";
import { placeWasSeen } from "@/lib/capture/sighted-effect";
import { sightedStand, unknownStand } from "@/lib/capture/sighted-stand";
import { radians, type StandBelief } from "@/lib/capture/stand";
import { standDoubt } from "@/lib/capture/stand-doubt";
import { stickWorth } from "@/lib/capture/stick-worth";
import { sticksDisagree } from "@/lib/capture/sticks-disagree";
import { cameraTiming } from "@/lib/domain/camera-geometry";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import { sideOf } from "@/lib/domain/picture-side";
import type { CaptureSightings } from "@/lib/domain/session";
import type { EnteredCapture } from "@/lib/domain/session-entry";
import type { Words } from "@/lib/words/catalogue";
import { sayNumber, withUnit } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { CaptureAnswer } from "./capture-answer-model";

/** ± on a page is 95 of 100. */
const HALF = 1.96;

/** Up to so many times what a check would leave a film counts as it is. */
const AS_CHECKED = 1.3;

/** Where an unknown place leaves so many reading errors, only large changes can be told in a season; own choice. */
const LARGE = 1.9;

/**
 * What one view's film shows of each fundamental, said before anything was read; it rests on nothing that is known of the student.
 *
 * @param fundamentals all; those of the other view are passed over
 * @param hand of the student: sides are said as whoever stands behind the phone sees them
 */
export function buildCaptureAnswer(
  words: Words,
  entered: EnteredCapture,
  fundamentals: readonly Fundamental[],
  hand: Hand,
): CaptureAnswer {
  const { view, seen } = entered;
  const stand = placeWasSeen(seen) ? sightedStand(view, seen, standDoubt(entered)) : null;
  const facts = {
    ...NO_FACTS,
    stickInPicture:
      view === "down-the-line" && seen.pointingStickLean !== null ? ("yes" as const) : NO_FACTS.stickInPicture,
  };
  const rows = fundamentals
    .filter((fundamental) => fundamental.view === view)
    .map((fundamental) => {
      const effect = captureEffect({ ...entered, statedSd: null }, fundamental, facts);
      return row(words, fundamental, effect, seen);
    });
  return {
    view,
    heading: sayPlace(words, entered, stand, hand),
    caption: words.say("capture.caption", { view: words.say(`view.${view}`) }),
    columns: [words.say("capture.column.name"), words.say("capture.column.use"), words.say("capture.column.doubt")],
    rows,
    next: sayNext(words, entered, hand),
    notes: sayNotes(words, entered, stand, fundamentals),
  };
}

function row(
  words: Words,
  fundamental: Fundamental,
  { use, why, captureSd, correction }: CaptureEffect,
  seen: CaptureSightings,
): CaptureAnswer["rows"][number] {
  const name = sayFundamental(words, fundamental);
  const unit = (value: number): string =>
    withUnit(words, sayNumber(words, value, value < 10 ? 1 : 0), fundamental.unit);
  if (!use) return { name, use: "aside", said: words.say(`capture.aside.${why}`), doubt: "" };
  const timed = sayTiming(words, fundamental, seen, unit);
  const doubt = words.say("capture.doubt", { half: unit(HALF * captureSd) });
  if (correction !== null)
    return {
      name,
      use: "taken-out",
      said: words.say("capture.taken-out", { shift: unit(Math.abs(correction.shift)) }) + timed,
      doubt,
    };
  if (captureSd <= AS_CHECKED * checkedCaptureSd(fundamental))
    return { name, use: "counts", said: words.say("capture.counts") + timed, doubt };
  const checked = unit(HALF * checkedCaptureSd(fundamental));
  return { name, use: "doubt", said: words.say("capture.more-doubt", { checked }) + timed, doubt };
}

/** What pictures a second and shutter leave of a fundamental that moves fast; empty: not known, or it moves slowly. */
function sayTiming(
  words: Words,
  fundamental: Fundamental,
  { framesPerSecond, shutterPerSecond }: CaptureSightings,
  unit: (value: number) => string,
): string {
  const speed = cameraTiming(fundamental)?.degreesPerSecond;
  if (speed === undefined) return "";
  const nearest =
    framesPerSecond === null
      ? ""
      : words.say("capture.timing", { half: unit(HALF * timingSd(speed, framesPerSecond)) });
  const smear =
    shutterPerSecond === null ? "" : words.say("capture.smear", { over: unit(blurDegrees(speed, shutterPerSecond)) });
  return nearest + smear;
}

/** Degrees off toward the plus side of the phone: face-on toward the target, down the line to the ball's side. */
function offToward(view: EnteredCapture["view"], { yaw }: StandBelief): number {
  return view === "face-on" ? yaw.value : -yaw.value;
}

function besideCm({ yaw, distanceCm }: StandBelief): { readonly value: number; readonly half: number } {
  const slope = Math.tan(radians(Math.abs(yaw.value)));
  const perDegree = radians(1) * distanceCm.value * (1 + slope ** 2);
  return { value: distanceCm.value * slope, half: HALF * perDegree * yaw.sd };
}

function sayPlace(words: Words, entered: EnteredCapture, stand: StandBelief | null, hand: Hand): string {
  const { view, squareness, offBy } = entered;
  if (stand === null) {
    if (squareness !== "off" || offBy === null)
      return words.say(squareness === "square" ? "capture.place.square" : `capture.place.unknown.${view}`);
    return words.say(`capture.place.off.${view}`, { amount: sayNumber(words, Math.abs(offBy), 0) });
  }
  const { yaw } = stand;
  const beside = besideCm(stand);
  const args = {
    degrees: sayNumber(words, Math.abs(yaw.value), 0),
    half: sayNumber(words, HALF * yaw.sd, 0),
    centimetres: sayNumber(words, beside.value, 0),
    halfCm: sayNumber(words, beside.half, 0),
    side: sideOf(view, "phone", hand, offToward(view, stand)) ?? "left",
  };
  const off = Math.abs(yaw.value) > HALF * yaw.sd;
  return words.say(`capture.place.${off ? "seen" : "seen-right"}.${view}`, args);
}

/** The one thing to move next time. */
function sayNext(words: Words, entered: EnteredCapture, hand: Hand): string {
  const { view } = entered;
  const next = nextPlacement(entered);
  const centimetres = "centimetres" in next ? sayNumber(words, next.centimetres, 0) : "";
  switch (next.kind) {
    case "move":
      return words.say("capture.next.move", {
        centimetres,
        side: sideOf(view, "phone", hand, -next.offToward) ?? "left",
      });
    case "back":
      return words.say("capture.next.back", { centimetres });
    case "height":
      return words.say("capture.next.height", { way: next.way });
    case "stick":
      return words.say(`capture.next.stick.${view}`);
    default:
      return words.say(`capture.next.${next.kind}`);
  }
}

function sayNotes(
  words: Words,
  entered: EnteredCapture,
  stand: StandBelief | null,
  fundamentals: readonly Fundamental[],
): readonly string[] {
  const { view, seen, placement, squareness } = entered;
  const notes: string[] = [];
  if (stand === null && squareness === "unknown") {
    const proof = fundamentals.filter((each) => each.view === view && each.cameraSdUnknown <= each.readerSd);
    if (proof.length > 0)
      notes.push(
        words.say("capture.note.without-sticks", {
          names: proof.map((each) => sayFundamental(words, each)).join(", "),
        }),
      );
    const large = fundamentals.filter((each) => each.view === view && each.cameraSdUnknown >= LARGE * each.readerSd);
    if (large.length > 0)
      notes.push(
        words.say("capture.note.only-large", { names: large.map((each) => sayFundamental(words, each)).join(", ") }),
      );
    if (view === "down-the-line") notes.push(words.say("capture.note.line-needs-stick"));
  }
  if (stand !== null && sticksDisagree(view, seen, unknownStand(view)))
    notes.push(words.say("capture.note.sticks-disagree"));
  if (seen.acrossStickSlope !== null || seen.pointingStickLean !== null) {
    const worth = stickWorth(seen.distanceCm ?? USUAL_DISTANCE_CM[view], seen.lensHeightCm ?? undefined);
    notes.push(
      words.say("capture.note.stick-worth", {
        times: sayNumber(words, worth.times, 0),
        across: sayNumber(words, worth.across, 1),
      }),
    );
  }
  if (placement === "same") notes.push(words.say("capture.note.same-place"));
  return notes;
}
