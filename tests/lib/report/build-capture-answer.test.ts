import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Hand } from "@/lib/domain/handedness";
import { type CaptureSightings, NOTHING_SEEN } from "@/lib/domain/session";
import type { EnteredCapture } from "@/lib/domain/session-entry";
import { buildCaptureAnswer } from "@/lib/report/build-capture-answer";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const answer = (over: Partial<EnteredCapture>, seen: Partial<CaptureSightings> = {}, hand: Hand = "right") =>
  buildCaptureAnswer(
    words,
    {
      view: "face-on",
      placement: "unknown",
      placementLabel: null,
      squareness: "unknown",
      offBy: null,
      seen: { ...NOTHING_SEEN, ...seen },
      placedBy: null,
      setAsideReason: null,
      filmReference: null,
      ...over,
    },
    BUILT_IN,
    hand,
  );
const row = (found: ReturnType<typeof answer>, name: string) => found.rows.find((each) => each.name === name);
const tilt = words.say("fundamental.setup-tilt.name");
const line = words.say("fundamental.foot-line.name");

describe("what a film can show", () => {
  it("every fundamental of the view and no other has a row", () => {
    for (const view of ["face-on", "down-the-line"] as const)
      expect(answer({ view }).rows.map((each) => each.name)).toEqual(
        BUILT_IN.filter((each) => each.view === view).map((each) => words.say(`fundamental.${each.id}.name`)),
      );
  });

  it("nobody looked: doubt, never none (1.96 x 3 = 5.9), and what is hardly touched is named", () => {
    const found = answer({});
    expect(row(found, tilt)).toMatchObject({ use: "doubt", doubt: "± 5.9°" });
    expect(found.notes.join(" ")).toContain(words.say("fundamental.tilt-kept.name"));
    expect(found.notes.join(" ")).toMatch(/only a large change can be told.*Side tilt, setup/);
    expect(found.next).toMatch(/stick/);
  });

  it("checked: counts (1.96 x .860 = 1.7), nothing to move", () => {
    const found = answer({ squareness: "square" });
    expect(row(found, tilt)).toMatchObject({ use: "counts", doubt: "± 1.7°" });
    expect(found.next).toBe(words.say("capture.next.nothing"));
  });

  it("a stick that leans 22.9 at 1 m and 3 m: 8 degrees, 42 cm too far to the right; next time to the left, for a left-hander the other way", () => {
    const seen = { pointingStickLean: 22.9, plumbLean: 0, lensHeightCm: 100, handsHeightCm: 90, distanceCm: 300 };
    const right = answer({}, seen);
    expect(right.heading).toMatch(/8° .*42 cm .*right/);
    expect(right.next).toMatch(/42 cm farther to the left/);
    expect(row(right, tilt)?.use).toBe("taken-out");
    const left = answer({}, seen, "left");
    expect(left.heading).toMatch(/to the left/);
    expect(left.next).toMatch(/farther to the right/);
  });

  it("15 cm beside the line without a stick: the foot line can't be used; with a stick in the picture it counts", () => {
    const view = "down-the-line";
    expect(row(answer({ view }, { besideHandsCm: 15, distanceCm: 400 }), line)?.use).toBe("aside");
    const stick = { pointingStickLean: 8.5, lensHeightCm: 100, distanceCm: 400 };
    expect(row(answer({ view }, stick), line)?.use).toBe("counts");
  });

  it("30 pictures a second: the shaft at impact can't be measured, hinge carries its timing, next time faster", () => {
    const found = answer({ squareness: "square" }, { framesPerSecond: 30 });
    expect(row(found, words.say("fundamental.shaft-lean.name"))?.use).toBe("aside");
    expect(row(found, words.say("fundamental.hinge.name"))?.said).toContain("3.4°");
    expect(found.next).toMatch(/60/);
  });

  it("a shutter of 1/500 smears the hinge over 180 / 500 = .4 degrees", () => {
    const found = answer({ squareness: "square" }, { shutterPerSecond: 500 });
    expect(row(found, words.say("fundamental.hinge.name"))?.said).toContain("0.4°");
  });

  it("sticks on opposite sides are asked about", () => {
    const seen = { pointingStickLean: 24.9, acrossStickSlope: -3, lensHeightCm: 100, distanceCm: 300, plumbLean: 0 };
    expect(answer({}, seen).notes.join(" ")).toMatch(/left taken for right/);
    expect(answer({}, { ...seen, acrossStickSlope: 3 }).notes.join(" ")).not.toMatch(/left taken for right/);
  });
});
