import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Lens, pictureSpot } from "@/lib/capture/picture-spot";

const lens: Lens = { at: { along: 0, out: 4, up: 1 }, heading: -Math.PI / 2 };

describe("a spot in the picture", () => {
  it("seen from the front the target lies to the right: 1 m along at 4 m is 0.25", () => {
    const spot = pictureSpot({ along: 1, out: 0, up: 1 }, lens);
    expect(spot.x).toBeCloseTo(0.25, 12);
    expect(spot.y).toBeCloseTo(0, 12);
  });

  it("seen from behind the ball's side lies to the right, and the ground below the middle: 1 m down at 4 m is 0.25", () => {
    const behind: Lens = { at: { along: -4, out: 0, up: 1 }, heading: 0 };
    expect(pictureSpot({ along: 0, out: 1, up: 0 }, behind)).toEqual({ x: 0.25, y: 0.25 });
  });

  it("a lens at c beside a line on the ground at height h sees it lean by c / h: 0.5 m and 1 m, tangent 0.5", () => {
    const beside: Lens = { ...lens, at: { ...lens.at, along: 0.5 } };
    const far = pictureSpot({ along: 0, out: 0, up: 0 }, beside);
    const near = pictureSpot({ along: 0, out: 2, up: 0 }, beside);
    expect((near.x - far.x) / (near.y - far.y)).toBeCloseTo(-0.5, 12);
  });

  it("upright things stay upright wherever the phone looks, since it doesn't tip", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2.4, max: -0.8, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (heading, along) => {
          const turned: Lens = { ...lens, heading };
          const foot = pictureSpot({ along, out: 0, up: 0 }, turned);
          const top = pictureSpot({ along, out: 0, up: 2 }, turned);
          expect(top.x).toBeCloseTo(foot.x, 9);
        },
      ),
    );
  });

  it("what is beside or behind the lens is in no picture", () => {
    expect(() => pictureSpot({ along: 0, out: 5, up: 1 }, lens)).toThrow(RangeError);
  });
});
