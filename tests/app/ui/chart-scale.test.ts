import fc from "fast-check";
import { expect, test } from "vitest";
import { pixel, pixelScale } from "@/app/_ui/chart-scale";

const value = fc.double({ min: -1e4, max: 1e4, noNaN: true });
const width = fc.double({ min: 0.01, max: 1e4, noNaN: true });
const px = fc.integer({ min: -2000, max: 2000 });

test("the ends of the range lie on the two pixels", () => {
  fc.assert(
    fc.property(value, width, px, px, (from, span, start, end) => {
      const scale = pixelScale({ from, to: from + span }, start, end);
      expect(scale(from)).toBe(start);
      expect(scale(from + span)).toBe(end);
    }),
  );
});

test("the drawing keeps the order of the values, and turns it round where the pixels run downwards", () => {
  fc.assert(
    fc.property(value, width, value, value, (from, span, a, b) => {
      const right = pixelScale({ from, to: from + span }, 10, 900);
      const up = pixelScale({ from, to: from + span }, 400, 20);
      const [less, more] = a < b ? [a, b] : [b, a];
      expect(right(less)).toBeLessThanOrEqual(right(more) + 1e-9);
      expect(up(less)).toBeGreaterThanOrEqual(up(more) - 1e-9);
    }),
  );
});

test("equal steps of the value are equal steps in pixels: 25 of 0 to 100 on 0 to 400 lies at 100, 50 at 200", () => {
  const scale = pixelScale({ from: 0, to: 100 }, 0, 400);
  expect([25, 50, 75].map(scale)).toEqual([100, 200, 300]);
});

test("what lies beyond the axis stops at its end and never leaves the plot", () => {
  fc.assert(
    fc.property(value, width, value, (from, span, any) => {
      const at = pixelScale({ from, to: from + span }, 44, 1056)(any);
      expect(at).toBeGreaterThanOrEqual(44);
      expect(at).toBeLessThanOrEqual(1056);
    }),
  );
});

test("a range without width, as after one session, lies in the middle", () => {
  expect(pixelScale({ from: 7, to: 7 }, 0, 300)(7)).toBe(150);
});

test("a pixel is written to a tenth: 1/3 reads 0.3", () => {
  expect(pixel(1 / 3)).toBe(0.3);
});
