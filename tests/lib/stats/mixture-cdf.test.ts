import { describe, expect, it } from "vitest";
import { mixtureCdf, mixtureDensity } from "@/lib/stats/mixture-cdf";

const mixture = {
  weights: Float64Array.from([0.25, 0.75]),
  means: Float64Array.from([0, 4]),
  sds: Float64Array.from([1, 2]),
};

describe("reference: by hand", () => {
  it("at 4: 0.25 Phi(4) + 0.75 / 2 = 0.624992", () => {
    expect(mixtureCdf(mixture, 4)).toBeCloseTo(0.25 * 0.9999683287581669 + 0.375, 9);
  });
  it("density at 0: 0.25 x 0.398942 + 0.75 / 2 x 0.053991", () => {
    expect(mixtureDensity(mixture, 0)).toBeCloseTo(0.25 * 0.3989422804 + 0.375 * 0.0539909665, 5);
  });
});

describe("invariance", () => {
  it("0 and 1 at the far ends, never falling between", () => {
    expect([mixtureCdf(mixture, -1e9), mixtureCdf(mixture, 1e9)]).toEqual([0, 1]);
    for (let x = -5; x < 12; x += 0.25)
      expect(mixtureCdf(mixture, x)).toBeLessThanOrEqual(mixtureCdf(mixture, x + 0.25));
  });
});
