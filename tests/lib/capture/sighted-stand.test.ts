import { describe, expect, it } from "vitest";
import { acrossSlope, pointingLean, sightedStand, unknownStand } from "@/lib/capture/sighted-stand";
import { stickWorth } from "@/lib/capture/stick-worth";
import { type CaptureSightings, NOTHING_SEEN } from "@/lib/domain/session";
import { between, normal, randomFrom } from "@/seed/random";
import { lineAngle, type Point } from "./projection-oracle";

const facing = (seen: Partial<CaptureSightings>) =>
  sightedStand("face-on", { ...NOTHING_SEEN, ...seen }, unknownStand("face-on"));
const behind = (seen: Partial<CaptureSightings>) =>
  sightedStand("down-the-line", { ...NOTHING_SEEN, ...seen }, unknownStand("down-the-line"));
const measured = { lensHeightCm: 100, distanceCm: 300 };

describe("reference: worked values (projection of a line on the ground, to the printed digit)", () => {
  it.each([
    [1, 3.0],
    [3, 8.9],
    [5, 14.7],
  ])("%d of yaw at 1 m height and 3 m: the stick that points at the phone leans %d", (yaw, lean) => {
    expect(Math.abs(pointingLean(yaw, 300, 100) - lean)).toBeLessThan(0.0501);
  });

  it("yaw 3: lean 8.94 (printed; 8.935 unrounded); the stick across slopes 1 for 3 of yaw", () => {
    expect(pointingLean(3, 300, 100)).toBeCloseTo(8.935, 3);
    expect(acrossSlope(3, 300, 100)).toBeCloseTo(1, 2);
  });

  it("the way beside the line is height x tan lean, whatever the distance: 30 cm at 4 m = 4.3, 10 cm = 1.4 degrees", () => {
    for (const [centimetres, angle] of [
      [30, 4.3],
      [10, 1.4],
    ] as const) {
      const lean = (Math.atan(centimetres / 100) * 180) / Math.PI;
      const { yaw } = behind({ pointingStickLean: lean, lensHeightCm: 100, distanceCm: 400 });
      expect(Math.abs(-yaw.value - angle)).toBeLessThan(0.0501);
      expect(Math.abs(-behind({ besideHandsCm: centimetres, distanceCm: 400 }).yaw.value - angle)).toBeLessThan(0.0501);
    }
  });

  it("a lean read to 2 degrees gives yaw to about .7; a distance and height paced to 15 % add 15 % of the yaw", () => {
    const upright = facing({ ...measured, pointingStickLean: 0, plumbLean: 0 });
    expect(Math.abs(upright.yaw.sd - 0.7)).toBeLessThan(0.05);
    const at = 5;
    const off = facing({ ...measured, pointingStickLean: pointingLean(at, 300, 100), plumbLean: 0 });
    expect(off.yaw.value).toBeCloseTo(at, 1);
    // The reading's part shrinks with the cosine of the lean squared.
    const reading = (2 / 3) * Math.cos((pointingLean(at, 300, 100) * Math.PI) / 180) ** 2;
    expect(Math.abs(off.yaw.sd - Math.hypot(reading, 0.15 * at))).toBeLessThan(0.12);
  });

  it("half a metre too high at 3 m is a pitch of 9.5", () => {
    const { pitch } = facing({ ...measured, lensHeightCm: 125, handsHeightCm: 75 });
    expect(Math.abs(pitch.value - 9.5)).toBeLessThan(0.0501);
  });

  it("per degree of reading the stick that points at the phone tells nine times as much: (3 m / 1 m) squared", () => {
    const { times, pointing, across } = stickWorth(300, 100);
    expect(times).toBe(9);
    expect(across / pointing).toBeCloseTo(9, 6);
  });
});

describe("a projection with perspective, 10,000 random films", () => {
  it("both sticks and the plumb line look as the formulas say (1e-6), level and aimed at the student's feet", () => {
    for (let n = 0; n < 10_000; n++) {
      const random = randomFrom(20261201, n);
      const [distance, height] = [between(random, 200, 600), between(random, 50, 160)];
      const [yaw, roll] = [between(random, -12, 12), between(random, -5, 5)];
      // The phone looks level; the ground lies `height` below its line.
      const camera = { yaw: -yaw, pitch: 0, roll, distance };
      const foot: Point = [0, -height, 0];
      const lean = 90 - lineAngle([0, -height, 1], foot, camera);
      expect(Math.abs(lean + pointingLean(yaw, distance, height) - roll)).toBeLessThan(1e-6);
      const slope = lineAngle(foot, [1, -height, 0], camera);
      expect(Math.abs(slope - (acrossSlope(yaw, distance, height) - roll))).toBeLessThan(1e-6);
    }
  });
});

describe("calibration: 2,000 films, seed 20261202", () => {
  it("the place lies within 1.96 sds in 95 of 100 (band .935 to .965)", () => {
    let within = 0;
    const films = 2000;
    for (let n = 0; n < films; n++) {
      const random = randomFrom(20261202, n);
      const [yaw, roll] = [8 * normal(random), normal(random)];
      const [distance, height] = [between(random, 300, 500), between(random, 70, 120)];
      const { yaw: found } = facing({
        pointingStickLean: pointingLean(yaw, distance, height) - roll + 2 * normal(random),
        plumbLean: roll + 0.5 * normal(random),
        distanceCm: distance * Math.exp(0.15 * normal(random)),
        lensHeightCm: height + 5 * normal(random),
      });
      if (Math.abs(found.value - yaw) <= 1.96 * found.sd) within++;
    }
    expect(within / films).toBeGreaterThan(0.935);
    expect(within / films).toBeLessThan(0.965);
  });
});

describe("too little and bad input", () => {
  it("nothing seen: the doubt about a phone that nobody looked at", () => {
    const { yaw, roll, pitch } = facing({});
    expect(yaw.value).toBeCloseTo(0, 9);
    expect(yaw.sd).toBeCloseTo(4, 9);
    expect(roll.sd).toBeCloseTo(1, 9);
    expect(pitch).toEqual({ value: 0, sd: 3 });
    expect(behind({}).yaw.sd).toBeCloseTo(2.1, 9);
  });

  it("without a plumb line yaw and roll are confused by the stick; with one both are known better", () => {
    const alone = facing({ ...measured, pointingStickLean: 9 });
    const both = facing({ ...measured, pointingStickLean: 9, plumbLean: 0 });
    expect(alone.yawRoll).toBeGreaterThan(both.yawRoll);
    expect(both.yaw.sd).toBeLessThan(alone.yaw.sd);
    expect(both.roll.sd).toBeLessThan(0.5);
  });

  it("the stick across alone says little: 3 degrees of slope leave an sd of 2 and more", () => {
    const { yaw } = facing({ ...measured, acrossStickSlope: 3, plumbLean: 0 });
    expect(yaw.value).toBeGreaterThan(3);
    expect(yaw.sd).toBeGreaterThan(2);
  });

  it("lengths of nothing and leans of 90 are refused", () => {
    expect(() => facing({ distanceCm: 0 })).toThrow(/distanceCm.*0/);
    expect(() => facing({ lensHeightCm: -1 })).toThrow(/-1/);
    expect(() => facing({ pointingStickLean: 90 })).toThrow(/90/);
    expect(() => facing({ plumbLean: Number.NaN })).toThrow(/NaN/);
    expect(() => facing({ besideHandsCm: Number.NaN })).toThrow(/NaN/);
  });

  it("no sighting gives NaN: every pair of extremes answers in numbers", () => {
    const extremes = [-89.9, -45, 0, 45, 89.9];
    for (const pointingStickLean of extremes)
      for (const acrossStickSlope of extremes)
        for (const distanceCm of [1, 300, 100_000]) {
          const { yaw, roll, pitch, distanceCm: far } = facing({ pointingStickLean, acrossStickSlope, distanceCm });
          for (const { value, sd } of [yaw, roll, pitch, far]) {
            expect(Number.isFinite(value)).toBe(true);
            expect(sd).toBeGreaterThan(0);
          }
        }
  });
});

describe("invariance", () => {
  it("mirrored sightings give the mirrored place", () => {
    const one = facing({ ...measured, pointingStickLean: 12, plumbLean: 1 });
    const other = facing({ ...measured, pointingStickLean: -12, plumbLean: -1 });
    expect(other.yaw.value).toBeCloseTo(-one.yaw.value, 9);
    expect(other.yaw.sd).toBeCloseTo(one.yaw.sd, 9);
  });
});
