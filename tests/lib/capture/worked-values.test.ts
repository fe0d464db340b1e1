import { describe, expect, it } from "vitest";
import { seenDirection } from "@/lib/capture/seen-direction";
import { seenLean } from "@/lib/capture/seen-lean";
import { sizeShown } from "@/lib/capture/seen-move";
import { SQUARE } from "@/lib/capture/stand";
import { leanInPicture, type Point, projected } from "./projection-oracle";

const square = { yaw: 0, pitch: 0, roll: 0, distance: Number.POSITIVE_INFINITY };
const sin = (angle: number): number => Math.sin((angle * Math.PI) / 180);
const cos = (angle: number): number => Math.cos((angle * Math.PI) / 180);

/** Angle between two directions of a picture, degrees. */
function between(a: readonly [number, number], b: readonly [number, number]): number {
  return (Math.abs(Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])) * 180) / Math.PI;
}

describe("reference: worked values that no correction is built on (projection geometry, to the printed digit)", () => {
  it("perspective changes a tilt of 7 with a bend of 35 by .04 to .12 at 6 to 2 m (hips at the height of the lens)", () => {
    const neck: Point = [0.5 * Math.tan((7 * Math.PI) / 180), 0.5, 0.5 * Math.tan((35 * Math.PI) / 180)];
    for (const distance of [2, 3, 4, 6]) {
      const off = Math.abs(leanInPicture([0, 0, 0], neck, { ...square, distance }) - 7);
      expect(off).toBeLessThan(0.12);
    }
  });

  it("a belt buckle 12 cm ahead of the axis fakes 13 % of a stance of 45 cm in a turn of 30 degrees, 19 % in one of 45", () => {
    for (const [turn, faked] of [
      [30, 13],
      [45, 19],
    ] as const) {
      const buckle: Point = [0.12 * sin(turn), 0, 0.12 * cos(turn)];
      expect(Math.abs((100 * projected(buckle, square)[0]) / 0.45 - faked)).toBeLessThan(0.51);
    }
  });

  it("a roll of 1 degree with hips that drop 3 cm: .1 % of a stance of 45 cm", () => {
    const seen = seenDirection({ across: 0, up: -0.03, toPhone: 0 }, { ...SQUARE, roll: 1 });
    expect(Math.abs((100 * Math.abs(seen.across)) / 0.45 - 0.1)).toBeLessThan(0.051);
  });

  it("a shaft of 1 m that points at a phone 4 m away shows its gap 4 / 3 times too large", () => {
    expect(sizeShown(-100, 400)).toBeCloseTo(1.33, 2);
    const gap = 0.1;
    expect(projected([gap, 0, 1], { ...square, distance: 4 })[0] / gap).toBeCloseTo(4 / 3, 9);
  });

  it("an arm 30 degrees out of the plane under a pitch of 10: a hinge of 90 reads 5.7 off, one way or the other", () => {
    for (const out of [30, -30])
      for (const pitch of [10, -10]) {
        const camera = { ...square, pitch };
        const arm = projected([cos(out), 0, sin(out)], camera);
        const club = projected([0, 1, 0], camera);
        expect(Math.abs(Math.abs(between(arm, club) - 90) - 5.7)).toBeLessThan(0.0501);
        const own = seenDirection({ across: cos(out), up: 0, toPhone: sin(out) }, { ...SQUARE, pitch });
        expect(between([own.across, own.up], [0, 1])).toBeCloseTo(between(arm, club), 9);
      }
  });

  it("zero tilt is unaffected by pitch, and a student .3 m off the line at 3 m is 5.7 degrees of yaw", () => {
    expect(seenLean(0, 35, { ...SQUARE, pitch: 10 })).toBeCloseTo(0, 12);
    expect((Math.atan(0.3 / 3) * 180) / Math.PI).toBeCloseTo(5.7, 1);
  });

  it("a grip line off by 2 degrees: 10 points, by 5: 24, hands .55 m below and chin to shoulder .20 m", () => {
    for (const [angle, points] of [
      [2, 10],
      [5, 24],
    ] as const)
      expect(Math.abs((100 * 0.55 * Math.tan((angle * Math.PI) / 180)) / 0.2 - points)).toBeLessThan(0.51);
  });
});
