import { describe, expect, it } from "vitest";
import { seenHinge, trueHinge } from "@/lib/capture/seen-hinge";
import { between, randomFrom } from "@/seed/random";
import { readReference } from "../../reference/read-reference";
import { type Point, projected } from "./projection-oracle";

function angleInPicture(a: Point, b: Point, camera: Parameters<typeof projected>[1]): number {
  const [p, q] = [projected(a, camera), projected(b, camera)];
  return (Math.abs(Math.atan2(p[0] * q[1] - p[1] * q[0], p[0] * q[0] + p[1] * q[1])) * 180) / Math.PI;
}

describe("reference: worked values of a hinge of 90 (projection geometry, to the printed digit)", () => {
  it.each([
    [20, -10, 86.4],
    [20, -5, 88.2],
    [20, 5, 91.8],
    [20, 10, 93.6],
    [35, -10, 83.1],
    [35, -5, 86.5],
    [35, 5, 93.5],
    [35, 10, 96.9],
    [45, -10, 80.1],
    [45, -5, 85.0],
    [45, 5, 95.0],
    [45, 10, 99.9],
  ])("out of the picture by %d under %d of yaw: %d", (out, yaw, seen) => {
    expect(Math.abs(seenHinge(90, out, yaw) - seen)).toBeLessThan(0.0501);
  });

  it("seen less hinge = atan(tan 35 sin 10) = 6.93", () => {
    const byHand = (Math.atan(Math.tan((35 * Math.PI) / 180) * Math.sin((10 * Math.PI) / 180)) * 180) / Math.PI;
    expect(seenHinge(90, 35, 10) - 90).toBeCloseTo(byHand, 9);
    expect(byHand).toBeCloseTo(6.93, 2);
  });
});

describe("reference: 10_camera_geometry.json, angles between two segments", () => {
  it("the tests' projection agrees with it, near and far, 16 cases to 1e-9", () => {
    const [found] = readReference<unknown, number[][]>("10_camera_geometry", "angle_between_3d");
    const rows = (found as { expected: number[][] }).expected;
    for (const row of rows) {
      const [ax, ay, az, bx, by, bz, yaw, pitch, distance, , near, far] = row as number[] as never as number[];
      // Listed vectors are twice the segments that start at the origin.
      const a = [ax, ay, az].map((value) => (value as number) / 2) as never as Point;
      const b = [bx, by, bz].map((value) => (value as number) / 2) as never as Point;
      const camera = { yaw: yaw as number, pitch: pitch as number, roll: 0 };
      expect(angleInPicture(a, b, { ...camera, distance: distance as number })).toBeCloseTo(near as number, 9);
      expect(angleInPicture(a, b, { ...camera, distance: Number.POSITIVE_INFINITY })).toBeCloseTo(far as number, 9);
    }
    expect(rows.length).toBe(16);
  });
});

describe("a projection, 12,000 random films", () => {
  const films = Array.from({ length: 12_000 }, (_, n) => {
    const random = randomFrom(20261128, n);
    return { hinge: between(random, 40, 130), out: between(random, 0, 50), yaw: between(random, -15, 15), random };
  });
  const arm: Point = [1, 0, 0];
  const club = (hinge: number, out: number): Point => {
    const turned = (hinge * Math.PI) / 180;
    return [Math.cos(turned), Math.sin(turned), -Math.tan((out * Math.PI) / 180)];
  };

  it("without perspective the formula is the projection (1e-9), and the true hinge comes back (1e-8)", () => {
    for (const { hinge, out, yaw } of films) {
      const seen = seenHinge(hinge, out, yaw);
      const camera = { yaw: -yaw, pitch: 0, roll: 0, distance: Number.POSITIVE_INFINITY };
      expect(Math.abs(seen - angleInPicture(arm, club(hinge, out), camera))).toBeLessThan(1e-9);
      expect(Math.abs(trueHinge(seen, out, yaw) - hinge)).toBeLessThan(1e-8);
    }
  });

  it("a roll changes nothing, a pitch nothing at a hinge of 90 with the phone on its line", () => {
    for (const { out, random } of films.slice(0, 500)) {
      const [pitch, roll] = [between(random, -10, 10), between(random, -10, 10)];
      const camera = { yaw: 0, pitch, roll, distance: Number.POSITIVE_INFINITY };
      expect(angleInPicture(arm, club(90, out), camera)).toBeCloseTo(90, 9);
    }
  });
});
