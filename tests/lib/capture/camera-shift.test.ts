import { describe, expect, it } from "vitest";
import { cameraShift, type FilmFacts } from "@/lib/capture/camera-shift";
import { seenHinge } from "@/lib/capture/seen-hinge";
import { seenLean } from "@/lib/capture/seen-lean";
import { SQUARE, type StandBelief } from "@/lib/capture/stand";
import { BUILT_IN, findFundamental } from "@/lib/domain/catalogue";
import { normal, randomFrom } from "@/seed/random";

const of = (id: string) => findFundamental(id, []) as NonNullable<ReturnType<typeof findFundamental>>;
const film = (readings: Record<string, number>, over: Partial<FilmFacts> = {}): FilmFacts => ({
  readings: new Map(Object.entries(readings)),
  stanceCm: null,
  stickInPicture: "not known",
  ...over,
});
const stand = (yaw: number, sd: number, over: Partial<StandBelief> = {}): StandBelief => ({
  yaw: { value: yaw, sd },
  roll: { value: 0, sd: 0 },
  pitch: { value: 0, sd: 0 },
  yawRoll: 0,
  distanceCm: { value: 350, sd: 0 },
  ...over,
});

describe("reference: worked values (projection geometry)", () => {
  it("a tilt of 7 with a bend of 35 known to 3, read 12.4 under 8 of yaw: 7 again, known to .7, 1.2, 2.1 at yaw sds of .5, 1.5, 3", () => {
    const seen = seenLean(7, 35, { ...SQUARE, yaw: 8 });
    expect(seen).toBeCloseTo(12.4, 1);
    for (const [sd, left] of [
      [0.5, 0.7],
      [1.5, 1.2],
      [3, 2.1],
    ] as const) {
      const found = cameraShift(of("setup-tilt"), stand(8, sd), film({ "setup-tilt": seen, "posture-bend": 35 }));
      expect(seen - found.shift).toBeCloseTo(7, 9);
      expect(found.truthOf?.(seen, null)).toBeCloseTo(7, 9);
      expect(Math.abs(found.sd - left)).toBeLessThan(0.0501);
    }
  });

  it("a hinge of 90 out of the picture by 35 known to 8, 10 of yaw: about 2 degrees stay, so it is never taken out", () => {
    const seen = seenHinge(90, 35, 10);
    const found = cameraShift(of("hinge"), stand(10, 0), film({ hinge: seen }));
    expect(found.shift).toBeCloseTo(6.93, 2);
    expect(Math.abs(found.sd - 2)).toBeLessThan(0.15);
    expect(found.truthOf).toBeNull();
  });

  it("30 cm on the ball's side at 4 m: the foot line reads 4.3 closed, the shaft line 4.3 the other way (derived)", () => {
    const beside = stand(-4.289, 0.5);
    const foot = cameraShift(of("foot-line"), beside, film({ "foot-line": 5 }));
    expect(foot.shift).toBeCloseTo(4.289, 9);
    expect(foot.truthOf?.(5, null)).toBeCloseTo(0.711, 9);
    expect(cameraShift(of("shaft-line"), beside, film({})).shift).toBeCloseTo(-4.289, 9);
    expect(cameraShift(of("foot-line"), beside, film({}, { stickInPicture: "yes" })).shift).toBe(0);
  });

  it("3 cm toward the phone under 10 of yaw: 1.2 % of a stance of 45 cm", () => {
    expect(Math.abs(cameraShift(of("hip-sway"), stand(10, 0), film({ "hip-sway": 5 })).sd - 1.2)).toBeLessThan(0.0501);
  });

  it("2.5 m away: of a sway of 20 % hips 15 cm behind the feet lose 5.7 % of themselves, 1.1 %; from 3 m on nothing is added", () => {
    const at = (distance: number) =>
      cameraShift(of("hip-sway"), stand(0, 0, { distanceCm: { value: distance, sd: 0 } }), film({ "hip-sway": 20 })).sd;
    expect(at(250)).toBeCloseTo(20 * (15 / 265), 9);
    expect(at(300)).toBe(0);
  });

  it("tilt kept: roll cancels, and of 5 of yaw .6 stay (bend 35 to 30)", () => {
    const at = (yaw: number, roll: number) =>
      cameraShift(
        of("tilt-kept"),
        stand(yaw, 0.5, { roll: { value: roll, sd: 3 } }),
        film({
          "setup-tilt": seenLean(7, 35, { ...SQUARE, yaw, roll }),
          "tilt-kept": seenLean(7, 30, { ...SQUARE, yaw }) - seenLean(7, 35, { ...SQUARE, yaw }),
        }),
      );
    expect(Math.abs(Math.abs(at(5, 0).shift) - 0.6)).toBeLessThan(0.0501);
    expect(at(5, 2).shift).toBeCloseTo(at(5, 0).shift, 6);
    expect(at(5, 0).sd).toBeLessThan(0.7);
    const alone = cameraShift(
      of("setup-tilt"),
      stand(5, 0.5, { roll: { value: 0, sd: 3 } }),
      film({ "setup-tilt": 10.4 }),
    );
    expect(alone.sd).toBeGreaterThan(3);
  });
});

describe("calibration: first order against 4,000 draws of place and bends (sd within 6 %, mean within .15 degrees)", () => {
  const draws = 4000;
  const spreadOf = (values: readonly number[]) => {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return { mean, sd: Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1)) };
  };

  it.each([
    [4, 1.0, 0.5],
    [8, 1.5, 1.0],
    [-9, 0.7, 0.5],
  ])("a top tilt that reads 10 under %d of yaw (sd %d), roll sd %d", (yaw, yawSd, rollSd) => {
    const random = randomFrom(20261203, yaw + 100);
    const belief = stand(yaw, yawSd, { roll: { value: 0, sd: rollSd }, pitch: { value: 2, sd: 2 } });
    const found = cameraShift(of("top-tilt"), belief, film({ "top-tilt": 10 }));
    const drawn = spreadOf(
      Array.from({ length: draws }, () => {
        const at = { yaw: yaw + yawSd * normal(random), roll: rollSd * normal(random), pitch: 2 + 2 * normal(random) };
        return trueLeanBySearch(10, 35 + 5 * normal(random) - 5 + 4 * normal(random), at);
      }),
    );
    expect(Math.abs(drawn.sd / found.sd - 1)).toBeLessThan(0.06);
    expect(Math.abs(drawn.mean - (10 - found.shift))).toBeLessThan(0.15);
  });

  it("tilt kept of 10 less 12 under 8 of yaw (sd 1.5): parts share the place and the bend", () => {
    const random = randomFrom(20261204, 0);
    const belief = stand(8, 1.5, { roll: { value: 0, sd: 2 } });
    const found = cameraShift(of("tilt-kept"), belief, film({ "setup-tilt": 12, "tilt-kept": -2 }));
    const drawn = spreadOf(
      Array.from({ length: draws }, () => {
        const at = { yaw: 8 + 1.5 * normal(random), roll: 2 * normal(random), pitch: 0 };
        const bend = 35 + 5 * normal(random);
        return trueLeanBySearch(10, bend - 5 + 4 * normal(random), at) - trueLeanBySearch(12, bend, at);
      }),
    );
    expect(Math.abs(drawn.sd / found.sd - 1)).toBeLessThan(0.06);
    expect(Math.abs(drawn.mean - (-2 - found.shift))).toBeLessThan(0.15);
  });
});

/** The lean that would look so, found by halving from the forward formula alone. */
function trueLeanBySearch(seen: number, toPhone: number, at: typeof SQUARE): number {
  let [low, high] = [-80, 80];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (seenLean(middle, toPhone, at) < seen) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

describe("no NaN for any input", () => {
  it("every fundamental answers in numbers for every place a phone may stand in", () => {
    for (const fundamental of BUILT_IN)
      for (const yaw of [-60, -10, 0, 10, 60])
        for (const roll of [-45, 0, 45])
          for (const reading of [fundamental.plausible.low, 0, fundamental.plausible.high]) {
            const belief = stand(yaw, 4, {
              roll: { value: roll, sd: 1 },
              pitch: { value: -20, sd: 3 },
              distanceCm: { value: 150, sd: 40 },
            });
            const found = cameraShift(fundamental, belief, film({ [fundamental.id]: reading }));
            expect(Number.isFinite(found.shift)).toBe(true);
            expect(Number.isFinite(found.sd) && found.sd >= 0).toBe(true);
            if (found.truthOf) expect(Number.isFinite(found.truthOf(reading, null))).toBe(true);
          }
  });
});
