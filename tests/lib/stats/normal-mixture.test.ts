import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mixtureCdf } from "@/lib/stats/mixture-cdf";
import { normalCdf } from "@/lib/stats/normal-distribution";
import { normalMixture } from "@/lib/stats/normal-mixture";

const components = fc.array(
  fc.record({
    weight: fc.double({ min: 0, max: 1, noNaN: true }),
    mean: fc.double({ min: -10, max: 10, noNaN: true }),
    variance: fc.double({ min: 0.25, max: 9, noNaN: true }),
  }),
  { minLength: 1, maxLength: 400 },
);
const made = (list: readonly { weight: number; mean: number; variance: number }[]) =>
  normalMixture(
    Float64Array.from(list, (one) => one.weight),
    Float64Array.from(list, (one) => one.mean),
    Float64Array.from(list, (one) => one.variance),
  );

describe("reference", () => {
  it("far components stay apart: weights 1 and 3 become 0.25 and 0.75", () => {
    const mixture = made([
      { weight: 1, mean: 0, variance: 1 },
      { weight: 3, mean: 9, variance: 4 },
    ]);
    expect([...mixture.weights]).toEqual([0.25, 0.75]);
    [...mixture.means].forEach((mean, i) => {
      expect(mean).toBeCloseTo([0, 9][i] as number, 12);
    });
    expect(mixture.sds[0]).toBeCloseTo(1, 12);
    expect(mixture.sds[1]).toBeCloseTo(2, 12);
  });
  it("near ones merge and keep mean and variance: N(0, 1) and N(0.2, 1), half each, to N(0.1, 1.01)", () => {
    const mixture = made([
      { weight: 1, mean: 0, variance: 1 },
      { weight: 1, mean: 0.2, variance: 1 },
    ]);
    expect(mixture.weights).toHaveLength(1);
    expect(mixture.means[0]).toBeCloseTo(0.1, 12);
    expect(mixture.sds[0]).toBeCloseTo(Math.sqrt(1.01), 12);
  });
});

describe("too little and bad input", () => {
  it("no weight throws", () => {
    expect(() => made([{ weight: 0, mean: 1, variance: 1 }])).toThrow("0");
    expect(() => made([{ weight: Number.NaN, mean: 1, variance: 1 }])).toThrow("NaN");
  });
});

describe("invariance: merging moves the distribution function by less than 0.001", () => {
  it("against every component on its own", () => {
    fc.assert(
      fc.property(components, fc.double({ min: -15, max: 15, noNaN: true }), (list, x) => {
        const total = list.reduce((sum, one) => sum + one.weight, 0);
        fc.pre(total > 0.01);
        const exact = list.reduce(
          (sum, one) => sum + (one.weight / total) * normalCdf((x - one.mean) / Math.sqrt(one.variance)),
          0,
        );
        expect(Math.abs(mixtureCdf(made(list), x) - exact)).toBeLessThan(0.001);
      }),
    );
  });
});
