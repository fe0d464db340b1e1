import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mixtureCdf } from "@/lib/stats/mixture-cdf";
import { mixtureEstimate, mixtureQuantile } from "@/lib/stats/mixture-quantile";
import { normalMixture } from "@/lib/stats/normal-mixture";

const one = normalMixture(Float64Array.of(1), Float64Array.of(10), Float64Array.of(4));

describe("reference: the normal distribution itself", () => {
  it("N(10, 2^2): 10, 10 -+ 2 x 1.281552, 10 -+ 2 x 1.959964", () => {
    const estimate = mixtureEstimate(one);
    expect(estimate.estimate).toBeCloseTo(10, 5);
    expect(estimate.low80).toBeCloseTo(10 - 2 * 1.2815515655, 5);
    expect(estimate.high80).toBeCloseTo(10 + 2 * 1.2815515655, 5);
    expect(estimate.low95).toBeCloseTo(10 - 2 * 1.9599639845, 5);
    expect(estimate.high95).toBeCloseTo(10 + 2 * 1.9599639845, 5);
  });
});

describe("too little and bad input", () => {
  it.each([0, 1, -0.5, Number.NaN])("probability %d throws", (p) => {
    expect(() => mixtureQuantile(one, p)).toThrow(String(p));
  });
});

describe("invariance", () => {
  it("the distribution function at the quantile is the probability, two far humps included", () => {
    const component = fc.tuple(
      fc.double({ min: 0.05, max: 1, noNaN: true }),
      fc.double({ min: -30, max: 30, noNaN: true }),
      fc.double({ min: 0.05, max: 9, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.array(component, { minLength: 1, maxLength: 8 }),
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        (list, p) => {
          const mixture = normalMixture(
            Float64Array.from(list, ([weight]) => weight),
            Float64Array.from(list, ([, mean]) => mean),
            Float64Array.from(list, ([, , variance]) => variance),
          );
          expect(Math.abs(mixtureCdf(mixture, mixtureQuantile(mixture, p)) - p)).toBeLessThan(1e-4);
        },
      ),
    );
  });
});
