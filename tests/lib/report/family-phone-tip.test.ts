import { describe, expect, it } from "vitest";
import type { PlacedCapture } from "@/lib/capture/next-placement";
import { HANDS } from "@/lib/domain/handedness";
import { type CaptureSightings, NOTHING_SEEN } from "@/lib/domain/session";
import { familyPhoneTip } from "@/lib/report/family-phone-tip";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const tip = (
  view: PlacedCapture["view"],
  seen: Partial<CaptureSightings>,
  hand: "right" | "left" = "right",
  over: Partial<PlacedCapture> = {},
) =>
  familyPhoneTip(
    words,
    { view, squareness: "unknown", offBy: null, seen: { ...NOTHING_SEEN, ...seen }, ...over },
    { alias: "Eli", hand },
  );

describe("the one tip for the phone", () => {
  it("a phone 42 cm too far toward the target goes a short step to the left of whoever faces a right-hander, and mirrored", () => {
    // The target lies to the right of whoever faces a right-hander; 42 cm at 4 m is 6°.
    const toward = { pointingStickLean: 22.8, distanceCm: 400, lensHeightCm: 100 };
    expect(HANDS.map((hand) => tip("face-on", toward, hand))).toEqual([
      "next time, facing Eli, put the phone one short step to your left.",
      "next time, facing Eli, put the phone one short step to your right.",
    ]);
    const away = { ...toward, pointingStickLean: -22.8 };
    expect(tip("face-on", away)).toBe("next time, facing Eli, put the phone one short step to your right.");
  });

  it("from behind a phone on the ball's side goes back behind the hands, to the left of a right-hander's ball", () => {
    const beside = (cm: number) => tip("down-the-line", { besideHandsCm: cm, distanceCm: 400 });
    expect(beside(42)).toBe(
      "keep the phone behind the hands, not to the side. Next time, standing behind Eli, put it one short step to your left.",
    );
    expect(beside(-42)).toContain("one short step to your right.");
    expect(beside(20)).toContain("a shoe’s length to your left.");
    expect(beside(100)).toContain("one big step to your left.");
    expect(beside(210)).toContain("2 big steps to your left.");
  });

  it("an amount without a side names none, and a phone in its place asks for nothing", () => {
    const off = { squareness: "off", offBy: 42 } as const;
    expect(tip("down-the-line", {}, "right", off)).toBe("keep the phone behind the hands, not to the side.");
    expect(tip("face-on", {}, "right", { squareness: "off", offBy: 6 })).toBe(
      "the phone stood one short step off its place. Put it right at the end of the second stick.",
    );
    expect(tip("face-on", {}, "right", { squareness: "square" })).toBe("");
  });

  it("has words for every other thing that may be wrong", () => {
    const stick = { pointingStickLean: 0, distanceCm: 400 };
    const all = [
      tip("face-on", { distanceCm: 250 }),
      tip("face-on", { ...stick, pointingStickLean: -4, plumbLean: 4 }),
      tip("face-on", { ...stick, lensHeightCm: 150, handsHeightCm: 75 }),
      tip("face-on", { ...stick, lensHeightCm: 20, handsHeightCm: 75 }),
      tip("face-on", { ...stick, framesPerSecond: 10 }),
      tip("face-on", {}),
    ];
    expect(new Set(all).size).toBe(all.length);
    for (const each of all) expect(each).toMatch(/^next time, .*\.$/);
  });
});
