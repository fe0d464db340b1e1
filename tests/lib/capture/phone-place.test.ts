import { describe, expect, it } from "vitest";
import { DISTANCE_ACCEPT_CM, OFFSET_DISTANCE_CM, OFFSET_REJECT_CM } from "@/lib/capture/camera-limits";
import { offsetAngle, rejection } from "@/lib/capture/misplacement";
import { FARTHEST_CM, phonePlace, sidewaysLimit } from "@/lib/capture/phone-place";
import { BUILT_IN } from "@/lib/domain/catalogue";

const hands = { along: 0.05, out: -0.5, up: 0.8 };

describe("where the phone stands", () => {
  it("face-on: straight out from the ball at the engine's distance, as high as the hands", () => {
    expect(phonePlace("face-on", hands)).toEqual({ along: 0, out: OFFSET_DISTANCE_CM / 100, up: 0.8 });
  });

  it("down the line: 4 m behind the hands at 0.05 m is at -3.95 m, on the hands' line and not the ball's", () => {
    const place = phonePlace("down-the-line", hands);
    expect(place.along).toBeCloseTo(-3.95, 12);
    expect([place.out, place.up]).toEqual([-0.5, 0.8]);
  });

  it("the engine's distance lies between the nearest and the farthest", () => {
    expect(DISTANCE_ACCEPT_CM).toBeLessThan(OFFSET_DISTANCE_CM);
    expect(OFFSET_DISTANCE_CM).toBeLessThan(FARTHEST_CM);
  });
});

describe("how far to one side is too far", () => {
  it("just beyond it the engine sets something of the view aside, and nothing just short of it", () => {
    const lost = (view: "face-on" | "down-the-line", cm: number): number =>
      BUILT_IN.filter((each) => each.view === view).filter(
        (each) => rejection(each, view === "face-on" ? offsetAngle(cm) : cm) !== null,
      ).length;
    for (const view of ["face-on", "down-the-line"] as const) {
      expect(lost(view, sidewaysLimit(view) + 0.1), view).toBeGreaterThan(0);
      expect(lost(view, sidewaysLimit(view) - 0.1), view).toBe(0);
    }
  });

  it("400 cm x tan 10 degrees = 70.5 cm face-on; the engine's own centimetres down the line", () => {
    expect(sidewaysLimit("face-on")).toBeCloseTo(70.53, 2);
    expect(sidewaysLimit("down-the-line")).toBe(OFFSET_REJECT_CM);
  });
});
