import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shortestInterval } from "@/lib/stats/shortest-interval";

describe("reference: by hand", () => {
  it("0 1 2 3 50 at 0.8: 0 to 3; at 1: all", () => {
    expect(shortestInterval([0, 1, 2, 3, 50], 0.8)).toEqual({ low: 0, high: 3 });
    expect(shortestInterval([0, 1, 2, 3, 50], 1)).toEqual({ low: 0, high: 50 });
  });
});

describe("too little and bad input", () => {
  it("one point is its own interval, none throws", () => {
    expect(shortestInterval([4], 0.95)).toEqual({ low: 4, high: 4 });
    expect(() => shortestInterval([], 0.8)).toThrow("0");
  });
});

describe("invariance", () => {
  it("it holds its share and no other stretch that does is shorter", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 99 }), { minLength: 1, maxLength: 25 }), (list) => {
        const sorted = [...list].sort((a, b) => a - b);
        const { low, high } = shortestInterval(sorted, 0.8);
        const need = Math.ceil(0.8 * sorted.length);
        expect(sorted.filter((x) => x >= low && x <= high).length).toBeGreaterThanOrEqual(need);
        for (let i = 0; i + need <= sorted.length; i++)
          expect(high - low).toBeLessThanOrEqual((sorted[i + need - 1] as number) - (sorted[i] as number));
      }),
    );
  });
});
