import { describe, expect, it } from "vitest";
import { nextPlacement, type PlacedCapture } from "@/lib/capture/next-placement";
import { type CaptureSightings, NOTHING_SEEN } from "@/lib/domain/session";

const placed = (
  view: PlacedCapture["view"],
  seen: Partial<CaptureSightings>,
  over: Partial<PlacedCapture> = {},
): PlacedCapture => ({
  ...{ view, squareness: "unknown", offBy: null, seen: { ...NOTHING_SEEN, ...seen }, ...over },
});

describe("the one thing to do otherwise with the phone", () => {
  it("what does most harm comes first: too near before too far aside", () => {
    expect(nextPlacement(placed("face-on", { distanceCm: 250, pointingStickLean: 40 }))).toEqual({ kind: "farther" });
  });

  it("down the line the way measured beside the hands is the way back, with its side", () => {
    const ball = nextPlacement(placed("down-the-line", { besideHandsCm: 42, distanceCm: 400 }));
    expect(ball).toMatchObject({ kind: "move" });
    if (ball.kind !== "move") return;
    expect(Math.abs(ball.centimetres - 42)).toBeLessThan(2);
    expect(ball.offToward).toBeGreaterThan(0);
    const heels = nextPlacement(placed("down-the-line", { besideHandsCm: -42, distanceCm: 400 }));
    expect(heels.kind === "move" && heels.offToward).toBeLessThan(0);
    expect(nextPlacement(placed("down-the-line", { besideHandsCm: 8, distanceCm: 400 })).kind).not.toBe("move");
  });

  it("face-on the stick that points at the phone tells the side: its near end away from the target, the phone toward it", () => {
    const next = nextPlacement(placed("face-on", { pointingStickLean: 30, distanceCm: 350, lensHeightCm: 100 }));
    expect(next.kind === "move" && next.offToward).toBeGreaterThan(0);
  });

  it("an amount that was stated has no side", () => {
    expect(nextPlacement(placed("down-the-line", {}, { squareness: "off", offBy: -42 }))).toEqual({
      ...{ kind: "back", centimetres: 42 },
    });
    // 400 cm × tan 6° = 42.04 cm.
    const faceOn = nextPlacement(placed("face-on", {}, { squareness: "off", offBy: 6 }));
    expect(faceOn.kind === "back" && Math.round(faceOn.centimetres)).toBe(42);
  });

  it("then its lean, its height, its pictures; then a stick where nobody looked; else nothing", () => {
    const stick = { pointingStickLean: 0, distanceCm: 400 };
    expect(nextPlacement(placed("face-on", { ...stick, pointingStickLean: -4, plumbLean: 4 }))).toEqual({
      kind: "level",
    });
    expect(nextPlacement(placed("face-on", { ...stick, lensHeightCm: 150, handsHeightCm: 75 }))).toEqual({
      ...{ kind: "height", way: "lower" },
    });
    expect(nextPlacement(placed("face-on", { ...stick, framesPerSecond: 10 }))).toEqual({ kind: "frames" });
    expect(nextPlacement(placed("face-on", {}))).toEqual({ kind: "stick" });
    expect(nextPlacement(placed("face-on", {}, { squareness: "square" }))).toEqual({ kind: "nothing" });
  });

  it("throws on an impossible length", () => {
    expect(() => nextPlacement(placed("face-on", { distanceCm: 400, lensHeightCm: -1 }))).toThrow(RangeError);
  });
});
