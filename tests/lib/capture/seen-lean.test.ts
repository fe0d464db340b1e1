import { describe, expect, it } from "vitest";
import { seenDirection } from "@/lib/capture/seen-direction";
import { seenLean, trueLean } from "@/lib/capture/seen-lean";
import { SQUARE } from "@/lib/capture/stand";
import { between, randomFrom } from "@/seed/random";
import { readReference } from "../../reference/read-reference";
import { leanInPicture, lineAngle, type Point, projected } from "./projection-oracle";

const yawed = (yaw: number) => ({ ...SQUARE, yaw });
const tan = (angle: number): number => Math.tan((angle * Math.PI) / 180);

describe("reference: worked values (projection geometry, to the printed digit)", () => {
  it.each([
    [0, -10, -6.9],
    [0, -5, -3.5],
    [0, 5, 3.5],
    [0, 10, 6.9],
    [7, -10, 0.0],
    [7, -5, 3.5],
    [7, 5, 10.4],
    [7, 10, 13.6],
    [-5, -10, -11.7],
    [-5, -5, -8.4],
    [-5, 5, -1.5],
    [-5, 10, 2.0],
  ])("a lean of %d with a bend of 35 under %d of yaw reads %d", (lean, yaw, seen) => {
    expect(Math.abs(seenLean(lean, 35, yawed(yaw)) - seen)).toBeLessThan(0.0501);
  });

  it.each([
    [-10, 6.9],
    [-5, 7.0],
    [5, 7.0],
    [10, 6.9],
  ])("without a bend 7 under %d of yaw reads %d: the cosine alone hardly matters", (yaw, seen) => {
    expect(Math.abs(seenLean(7, 0, yawed(yaw)) - seen)).toBeLessThan(0.0501);
  });

  it("tilt 7, bend 35, yaw 10: 13.63; tilt 10, bend 35, pitch 10: 11.54, pitch -10: 9.1", () => {
    expect(seenLean(7, 35, yawed(10))).toBeCloseTo(13.63, 2);
    expect(seenLean(10, 35, { ...SQUARE, pitch: 10 })).toBeCloseTo(11.54, 2);
    expect(seenLean(10, 35, { ...SQUARE, pitch: -10 })).toBeCloseTo(9.1, 1);
    expect(seenLean(0, 35, { ...SQUARE, pitch: 10 })).toBeCloseTo(0, 12);
  });

  it("per degree of yaw .46, .57, .69, .83 at bends of 25, 30, 35, 40 (tilt 7)", () => {
    for (const [bend, rate] of [
      [25, 0.46],
      [30, 0.57],
      [35, 0.69],
      [40, 0.83],
    ] as const) {
      const slope = (seenLean(7, bend, yawed(0.01)) - seenLean(7, bend, yawed(-0.01))) / 0.02;
      expect(Math.abs(slope - rate)).toBeLessThan(0.0051);
      expect(slope).toBeCloseTo(tan(bend) * Math.cos((7 * Math.PI) / 180) ** 2, 6);
    }
  });

  it("a roll adds one to one: 7 under 2 of roll reads 9", () => {
    expect(seenLean(7, 35, { ...SQUARE, roll: 2 })).toBeCloseTo(9, 12);
  });

  it("what is left of tilt kept, bend 35 to 30: .6 at 5 of yaw, 1.2 at 10, against 3.4 and 6.6 for the tilt alone", () => {
    const kept = (yaw: number) => seenLean(7, 30, yawed(yaw)) - seenLean(7, 35, yawed(yaw));
    expect(Math.abs(kept(5)) - 0.6).toBeLessThan(0.05);
    expect(Math.abs(kept(10)) - 1.2).toBeLessThan(0.05);
    expect(seenLean(7, 35, yawed(5)) - 7).toBeCloseTo(3.4, 1);
    expect(seenLean(7, 35, yawed(10)) - 7).toBeCloseTo(6.6, 1);
  });
});

describe("reference: 10_camera_geometry.json, a brute-force projection", () => {
  it("angles of lines in the frontal plane under yaw and pitch, 72 cases to 1e-9", () => {
    const [found] = readReference<unknown, number[][]>("10_camera_geometry", "ortho_line_angle");
    const { expected } = found as NonNullable<typeof found>;
    for (const [angle, yaw, pitch, observed] of expected as [number, number, number, number][]) {
      const direction = {
        across: Math.cos((angle * Math.PI) / 180),
        up: Math.sin((angle * Math.PI) / 180),
        toPhone: 0,
      };
      const seen = seenDirection(direction, { yaw: -yaw, pitch, roll: 0 });
      expect((Math.atan2(seen.up, seen.across) * 180) / Math.PI).toBeCloseTo(observed, 9);
    }
    expect(expected.length).toBe(72);
  });

  it("the tests' own projection agrees with it, with perspective and roll, 24 cases to 1e-9", () => {
    const [found] = readReference<unknown, number[][]>("10_camera_geometry", "perspective_line_angle");
    const { expected } = found as NonNullable<typeof found>;
    for (const row of expected) {
      const [angle, yaw, pitch, roll, distance, length, x, y, z, observed] = row as never as Record<number, number> &
        Iterable<number>;
      const from: Point = [x as number, y as number, z as number];
      const turned = ((angle as number) * Math.PI) / 180;
      const to: Point = [
        (x as number) + (length as number) * Math.cos(turned),
        (y as number) + (length as number) * Math.sin(turned),
        z as number,
      ];
      const camera = { yaw, pitch, roll, distance } as never as Parameters<typeof lineAngle>[2];
      expect(lineAngle(from, to, camera)).toBeCloseTo(observed as number, 9);
    }
    expect(expected.length).toBe(24);
  });
});

describe("a projection with perspective, 12,000 random films", () => {
  it("without perspective the formula is the projection (1e-9); with it, at 3 to 6 m, off by .2 degrees at most in 95 of 100", () => {
    const off: number[] = [];
    for (let n = 0; n < 12_000; n++) {
      const random = randomFrom(20261126, n);
      const lean = between(random, -15, 30);
      const bend = between(random, 15, 45);
      const stand = { yaw: between(random, -15, 15), pitch: between(random, -10, 10), roll: between(random, -5, 5) };
      const spine: Point = [0.5 * tan(lean), 0.5, 0.5 * tan(bend)];
      const far = { yaw: -stand.yaw, pitch: stand.pitch, roll: stand.roll, distance: Number.POSITIVE_INFINITY };
      const seen = seenLean(lean, bend, stand);
      expect(Math.abs(seen - leanInPicture([0, 0, 0], spine, far))).toBeLessThan(1e-9);
      // Hips and neck about the middle of the picture.
      const half = spine.map((value) => value / 2) as never as Point;
      const below = half.map((value) => -value) as never as Point;
      off.push(Math.abs(seen - leanInPicture(below, half, { ...far, distance: between(random, 3, 6) })));
    }
    off.sort((a, b) => a - b);
    expect(off[Math.floor(0.95 * off.length)] as number).toBeLessThan(0.2);
    expect(off.at(-1) as number).toBeLessThan(0.6);
  });

  it("the true lean comes back from the seen one, 12,000 films to 1e-8", () => {
    for (let n = 0; n < 12_000; n++) {
      const random = randomFrom(20261127, n);
      const [lean, bend] = [between(random, -40, 50), between(random, -20, 60)];
      const stand = { yaw: between(random, -30, 30), pitch: between(random, -15, 15), roll: between(random, -10, 10) };
      expect(Math.abs(trueLean(seenLean(lean, bend, stand), bend, stand) - lean)).toBeLessThan(1e-8);
    }
  });
});

describe("limits", () => {
  it("a square phone shows what is there", () => {
    expect(seenLean(12, 35, SQUARE)).toBeCloseTo(12, 12);
    expect(projected([1, 2, 3], { yaw: 0, pitch: 0, roll: 0, distance: Number.POSITIVE_INFINITY })).toEqual([1, 2]);
  });

  it("mirror: a lean and a yaw of the other sign read the other sign", () => {
    expect(seenLean(-7, 35, yawed(-6))).toBeCloseTo(-seenLean(7, 35, yawed(6)), 12);
  });
});
