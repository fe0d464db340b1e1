import { describe, expect, it } from "vitest";
import { captureEffect } from "@/lib/capture/capture-effect";
import { BUILT_IN, findFundamental } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { type Capture, NOTHING_SEEN } from "@/lib/domain/session";

const of = (id: string): Fundamental => {
  const found = findFundamental(id, []);
  if (!found) throw new Error(id);
  return found;
};
const capture = (over: Partial<Capture>): Capture => ({
  view: "face-on",
  placement: "anew",
  placementLabel: null,
  squareness: "unknown",
  offBy: null,
  statedSd: null,
  setAsideReason: null,
  seen: NOTHING_SEEN,
  placedBy: null,
  filmReference: null,
  ...over,
});

describe("captureEffect: the trade's numbers (derived by projection, or common practice)", () => {
  it("no record and nobody looked: the sd of an unknown placement, never zero", () => {
    for (const fundamental of BUILT_IN) {
      const view = fundamental.view;
      expect(captureEffect(null, fundamental).captureSd).toBe(fundamental.cameraSdUnknown);
      expect(captureEffect(capture({ view }), fundamental)).toEqual({
        use: true,
        captureSd: fundamental.cameraSdUnknown,
        why: "unknown",
      });
    }
  });

  it("an unknown placement agrees with yaw sd 4 and roll sd 1: hypot(.7 x 4, 1 x 1) = 2.97, table 3 (derived)", () => {
    const tilt = of("setup-tilt");
    const derived = Math.hypot(tilt.sensitivity.yaw * 4, tilt.sensitivity.roll * 1);
    expect(derived).toBeCloseTo(2.97, 2);
    expect(Math.abs(derived - tilt.cameraSdUnknown)).toBeLessThan(0.05);
  });

  it("square: hypot(.7 x 1, 1 x .5) = .860 for a tilt, hypot(1 x .6) = .6 for a line", () => {
    expect(captureEffect(capture({ squareness: "square" }), of("setup-tilt")).captureSd).toBeCloseTo(0.8602, 4);
    const line = captureEffect(capture({ view: "down-the-line", squareness: "square" }), of("foot-line"));
    expect(line).toEqual({ use: true, captureSd: 0.6, why: "square" });
  });

  it("square is never worse than unknown, for any fundamental", () => {
    for (const fundamental of BUILT_IN) {
      const effect = captureEffect(capture({ view: fundamental.view, squareness: "square" }), fundamental);
      expect(effect.captureSd).toBeLessThanOrEqual(fundamental.cameraSdUnknown);
      expect(effect.captureSd).toBeGreaterThan(0);
    }
  });

  it("off by 5 degrees moves a tilt by .7 x 5 = 3.5 (derived table: 7 reads 10.4): hypot(.860, 3.5) = 3.604", () => {
    const effect = captureEffect(capture({ squareness: "off", offBy: 5 }), of("setup-tilt"));
    expect(effect.why).toBe("off-widened");
    expect(effect.captureSd).toBeCloseTo(3.6042, 4);
  });

  it("10 cm at 4 m read 1.4 degrees, 30 cm 4.3 degrees (derived)", () => {
    const effect = (offBy: number) =>
      captureEffect(capture({ view: "down-the-line", squareness: "off", offBy }), of("foot-line")).captureSd;
    expect(Math.sqrt(effect(10) ** 2 - 0.36)).toBeCloseTo(1.432, 3);
    expect(Math.sqrt(effect(30) ** 2 - 0.36)).toBeCloseTo(4.289, 3);
  });

  it("the side does not matter: off by -6 widens as off by 6", () => {
    const effect = (offBy: number) => captureEffect(capture({ squareness: "off", offBy }), of("hinge"));
    expect(effect(-6)).toEqual(effect(6));
  });

  it("sets aside beyond 10 degrees of yaw where it moves the reading, beyond 15 where it hardly does (common practice)", () => {
    const at = (id: string, offBy: number) => captureEffect(capture({ squareness: "off", offBy }), of(id));
    expect(at("setup-tilt", 10).use).toBe(true);
    expect(at("setup-tilt", 10.5)).toMatchObject({ use: false, why: "yaw-too-large" });
    expect(at("tilt-kept", 10.5).use).toBe(true);
    expect(at("hip-sway", -15).use).toBe(true);
    expect(at("hip-sway", -16)).toMatchObject({ use: false, why: "yaw-too-large" });
  });

  it("sets aside a line read from more than 35 cm beside it; a bend stays (common practice)", () => {
    const at = (id: string, offBy: number) =>
      captureEffect(capture({ view: "down-the-line", squareness: "off", offBy }), of(id));
    expect(at("shaft-line", 35).use).toBe(true);
    expect(at("shaft-line", 36)).toMatchObject({ use: false, why: "offset-too-large" });
    expect(at("posture-bend", 60).use).toBe(true);
  });

  it("a stated sd wins over the record; a view set aside stays aside", () => {
    expect(captureEffect(capture({ squareness: "off", offBy: 12, statedSd: 0.4 }), of("hinge"))).toEqual({
      use: true,
      captureSd: 0.4,
      why: "stated",
    });
    expect(captureEffect(capture({ squareness: "square", setAsideReason: "dark" }), of("hinge"))).toMatchObject({
      use: false,
      why: "set-aside",
    });
  });

  it("off by nobody knows how much is unknown", () => {
    expect(captureEffect(capture({ squareness: "off" }), of("hinge")).why).toBe("unknown");
  });

  it("refuses a record of the other view and numbers that can't be", () => {
    expect(() => captureEffect(capture({ view: "down-the-line" }), of("hinge"))).toThrow(/hinge/);
    expect(() => captureEffect(capture({ statedSd: -1 }), of("hinge"))).toThrow(/-1/);
    expect(() => captureEffect(capture({ squareness: "off", offBy: Number.NaN }), of("hinge"))).toThrow(/NaN/);
  });
});
