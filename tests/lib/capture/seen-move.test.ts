import { describe, expect, it } from "vitest";
import { moveLeak, sizeShown } from "@/lib/capture/seen-move";
import { between, randomFrom } from "@/seed/random";
import { expectNear, readReference } from "../../reference/read-reference";
import { type Point, projected } from "./projection-oracle";

describe("reference: worked values (projection geometry, to the printed digit)", () => {
  it.each([
    [5, 0.6],
    [10, 1.2],
    [15, 1.8],
  ])("3 cm toward the phone in a stance of 45 cm under %d of yaw: %d %%", (yaw, leak) => {
    expect(Math.abs(moveLeak(3, 45, yaw) - leak)).toBeLessThan(0.0501);
  });

  it("hips 15 cm behind the feet at 3 m read 5 % small: 10 % reads 9.5 %", () => {
    expect(sizeShown(15, 300)).toBeCloseTo(0.952, 3);
    expect(10 * sizeShown(15, 300)).toBeCloseTo(9.5, 1);
  });
});

describe("reference: 10_camera_geometry.json, a shift of 10 cm at several depths", () => {
  it("with the phone on its line the shift shows D / (D - z) of itself", () => {
    const [found] = readReference<unknown, number[][]>("10_camera_geometry", "sideways_shift_scale");
    const { expected, tolerance } = found as NonNullable<typeof found>;
    const straight = expected.filter((row) => row[1] === 0);
    for (const [distance, , z, , , ratio] of straight as [number, number, number, number, number, number][])
      expectNear(sizeShown(-z, distance), ratio, tolerance);
    expect(straight.length).toBe(9);
  });
});

describe("a projection without perspective, 10,000 random films", () => {
  it("way over stance: the formula is the projection (1e-9); what yaw shortens cancels", () => {
    for (let n = 0; n < 10_000; n++) {
      const random = randomFrom(20261129, n);
      const [stance, way, toward] = [between(random, 25, 70), between(random, -20, 20), between(random, -10, 10)];
      const yaw = between(random, -20, 20);
      const camera = { yaw: -yaw, pitch: 0, roll: 0, distance: Number.POSITIVE_INFINITY };
      const shown = (point: Point): number => projected(point, camera)[0];
      const seen = (100 * shown([way, 0, toward])) / shown([stance, 0, 0]);
      expect(Math.abs(seen - (100 * way) / stance - moveLeak(toward, stance, yaw))).toBeLessThan(1e-9);
    }
  });
});

describe("bad input", () => {
  it("a stance or a distance of nothing is refused", () => {
    expect(() => moveLeak(3, 0, 5)).toThrow(/0/);
    expect(() => sizeShown(15, 0)).toThrow(/0/);
  });
});
