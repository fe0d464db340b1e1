import { describe, expect, it } from "vitest";
import { cholesky } from "@/lib/stats/cholesky";
import { whiten } from "@/lib/stats/whiten";
import { normal, seeded } from "./made-series";

describe("reference: by hand", () => {
  it("2 / 6 1 applied to 4 and 13: z = 2, 13 - 12 = 1", () => {
    expect([...whiten(Float64Array.from([2, 0, 6, 1]), [4, 13], 2)]).toEqual([2, 1]);
  });
});

describe("invariance", () => {
  it("the factor times the whitened column is the column", () => {
    const factor = cholesky(Float64Array.from([5, 2, 1, 2, 6, 2, 1, 2, 7]), 3);
    const z = whiten(factor, [3, -1, 4], 3);
    const back = [0, 1, 2].map((i) =>
      [0, 1, 2].reduce((sum, k) => sum + (factor[i * 3 + k] as number) * (z[k] as number), 0),
    );
    [3, -1, 4].forEach((value, i) => {
      expect(back[i]).toBeCloseTo(value, 12);
    });
  });
});

describe("calibration: 20,000 pairs of correlation 0.8", () => {
  it("whitened pairs have correlation 0 within 0.03 (four standard errors are 0.028)", () => {
    const factor = cholesky(Float64Array.from([1, 0.8, 0.8, 1]), 2);
    const random = seeded(3);
    let product = 0;
    for (let r = 0; r < 20_000; r++) {
      const a = normal(random);
      const z = whiten(factor, [a, 0.8 * a + 0.6 * normal(random)], 2);
      product += (z[0] as number) * (z[1] as number);
    }
    expect(Math.abs(product / 20_000)).toBeLessThan(0.03);
  });
});
