import { describe, expect, it } from "vitest";
import { captureEffect, NO_FACTS } from "@/lib/capture/capture-effect";
import { BUILT_IN, findFundamental } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { type Capture, type CaptureSightings, NOTHING_SEEN } from "@/lib/domain/session";
import { between, randomFrom } from "@/seed/random";

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
        offBy: null,
        correction: null,
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
    expect(line).toEqual({ use: true, captureSd: 0.6, why: "square", offBy: null, correction: null });
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
    expect(effect(-6)).toEqual({ ...effect(6), offBy: -6 });
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
      offBy: 12,
      correction: null,
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

describe("captureEffect: a place that was looked at", () => {
  const seen = (over: Partial<CaptureSightings>) => ({ ...NOTHING_SEEN, ...over });
  const sticks = seen({
    pointingStickLean: 22.9,
    plumbLean: 0,
    lensHeightCm: 100,
    handsHeightCm: 100,
    distanceCm: 300,
  });
  const facts = (readings: Record<string, number>) => ({ ...NO_FACTS, readings: new Map(Object.entries(readings)) });

  it("8 of yaw seen by the stick: a tilt that reads 12.4 is 7 (derived), a hinge carries its shift as doubt", () => {
    const tilt = captureEffect(
      capture({ seen: sticks }),
      of("setup-tilt"),
      facts({ "setup-tilt": 12.4, "posture-bend": 35 }),
    );
    expect(tilt.why).toBe("corrected");
    expect(Math.abs((tilt.correction?.truthOf(12.4, null) ?? 0) - 7)).toBeLessThan(0.1);
    expect(tilt.captureSd).toBeLessThan(1.5);
    const hinge = captureEffect(capture({ seen: sticks }), of("hinge"), facts({ hinge: 95.6 }));
    expect(hinge).toMatchObject({ use: true, why: "sighted", correction: null });
    expect(hinge.captureSd).toBeGreaterThan(5);
  });

  it("what was seen wins over the quick answer, a stated sd over both", () => {
    const told = { squareness: "square", seen: sticks } as const;
    expect(captureEffect(capture(told), of("setup-tilt"), facts({ "setup-tilt": 12.4 })).why).toBe("corrected");
    expect(captureEffect(capture({ ...told, statedSd: 1 }), of("setup-tilt")).why).toBe("stated");
  });

  it("a shift smaller than the doubt that it leaves is not taken out: upright stick, known to .7", () => {
    const upright = seen({ pointingStickLean: 1, plumbLean: 0, lensHeightCm: 100, distanceCm: 300 });
    const effect = captureEffect(capture({ seen: upright }), of("setup-tilt"), facts({ "setup-tilt": 7 }));
    expect(effect).toMatchObject({ use: true, why: "sighted", correction: null });
    expect(effect.captureSd).toBeLessThan(of("setup-tilt").cameraSdUnknown / 2);
  });

  it("taking out never raises the mean square: at any yaw the sd is no more than that of leaving it in", () => {
    for (let lean = -28; lean <= 28; lean += 2) {
      const looked = seen({ pointingStickLean: lean, plumbLean: 0, lensHeightCm: 100, distanceCm: 300 });
      const effect = captureEffect(capture({ seen: looked }), of("setup-tilt"), facts({ "setup-tilt": 9 }));
      const shift = effect.correction?.shift ?? 0;
      expect(effect.captureSd).toBeLessThanOrEqual(Math.hypot(shift, effect.captureSd) + 1e-12);
      if (effect.correction) expect(Math.abs(shift)).toBeGreaterThanOrEqual(effect.captureSd - 1e-9);
    }
  });

  it("sets aside beyond the limits: yaw 12, 1.9 m, pitch 12, 12 cm beside the line without a stick (common practice)", () => {
    const far = seen({ pointingStickLean: 32.5, lensHeightCm: 100, distanceCm: 300 });
    expect(captureEffect(capture({ seen: far }), of("setup-tilt"))).toMatchObject({ use: false, why: "yaw-too-large" });
    expect(captureEffect(capture({ seen: far }), of("hip-sway")).use).toBe(true);
    expect(captureEffect(capture({ seen: seen({ distanceCm: 190 }) }), of("hip-sway")).why).toBe("too-near");
    const high = seen({ lensHeightCm: 140, handsHeightCm: 75, distanceCm: 300 });
    expect(captureEffect(capture({ seen: high }), of("hinge")).why).toBe("pitch-too-large");
    expect(captureEffect(capture({ seen: high }), of("setup-tilt")).use).toBe(true);
    const beside = capture({ view: "down-the-line", seen: seen({ besideHandsCm: 12, distanceCm: 400 }) });
    expect(captureEffect(beside, of("foot-line")).why).toBe("no-stick");
    expect(captureEffect(beside, of("foot-line"), { ...NO_FACTS, stickInPicture: "yes" }).use).toBe(true);
    expect(captureEffect(beside, of("shaft-line")).use).toBe(true);
  });

  it("the shaft at impact needs 240 pictures a second and 1/1000 s (common practice); unknown is not too slow", () => {
    const at = (over: Partial<CaptureSightings>) => captureEffect(capture({ seen: seen(over) }), of("shaft-lean")).why;
    expect(at({ framesPerSecond: 120 })).toBe("too-slow");
    expect(at({ framesPerSecond: 240, shutterPerSecond: 500 })).toBe("too-slow");
    expect(at({ framesPerSecond: 240, shutterPerSecond: 1000 })).toBe("unknown");
    expect(at({})).toBe("unknown");
    expect(captureEffect(capture({ seen: seen({ framesPerSecond: 30 }) }), of("hinge")).why).toBe("unknown");
  });

  it("never zero, never NaN: every fundamental under 3,000 random sightings", () => {
    for (let n = 0; n < 3000; n++) {
      const random = randomFrom(20261205, n);
      const maybe = (low: number, high: number) => (random.uniform() < 0.5 ? null : between(random, low, high));
      const looked: CaptureSightings = {
        pointingStickLean: maybe(-80, 80),
        acrossStickSlope: maybe(-30, 30),
        plumbLean: maybe(-20, 20),
        lensHeightCm: maybe(10, 250),
        handsHeightCm: maybe(30, 120),
        distanceCm: maybe(50, 1200),
        besideHandsCm: maybe(-200, 200),
        framesPerSecond: maybe(10, 300),
        shutterPerSecond: maybe(10, 8000),
      };
      const fundamental = BUILT_IN[n % BUILT_IN.length] as Fundamental;
      const reading = between(random, fundamental.plausible.low, fundamental.plausible.high);
      const effect = captureEffect(
        capture({ view: fundamental.view, seen: looked }),
        fundamental,
        facts({ [fundamental.id]: reading }),
      );
      expect(effect.captureSd).toBeGreaterThan(0);
      expect(Number.isFinite(effect.captureSd)).toBe(true);
      if (effect.correction) expect(Number.isFinite(effect.correction.truthOf(reading, null))).toBe(true);
    }
  });
});
