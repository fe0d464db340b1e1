import { describe, expect, it } from "vitest";
import { trueReplicateVariance } from "@/lib/stats/true-replicate-variance";
import { normal, seeded } from "./made-series";

describe("reference: by hand", () => {
  it("9 - 1 - 4 / 12 = 7.667; doubled: 18 - 1 - 4 / 12", () => {
    const spread = { replicateSd: 3, readingErrorSd: 1, step: 2 };
    expect(trueReplicateVariance(spread, 1)).toBeCloseTo(9 - 1 - 1 / 3, 12);
    expect(trueReplicateVariance(spread, 2)).toBeCloseTo(18 - 1 - 1 / 3, 12);
  });
});

describe("too little", () => {
  it("a twentieth stays where the errors explain all of it: 0.05 x 9", () => {
    expect(trueReplicateVariance({ replicateSd: 3, readingErrorSd: 3, step: 5 }, 1)).toBeCloseTo(0.45, 12);
    expect(trueReplicateVariance({ replicateSd: 0, readingErrorSd: 1, step: 0 }, 1)).toBe(0);
  });
});

describe("calibration: 40,000 values of sd 3, reading error 1, rounded to 2", () => {
  it("the variance comes back to 9 within 3 % (standard error 0.9 %)", () => {
    const random = seeded(4);
    let square = 0;
    for (let i = 0; i < 40_000; i++) square += (2 * Math.round((3 * normal(random) + normal(random)) / 2)) ** 2;
    const spread = { replicateSd: Math.sqrt(square / 40_000), readingErrorSd: 1, step: 2 };
    expect(Math.abs(trueReplicateVariance(spread, 1) / 9 - 1)).toBeLessThan(0.03);
  });
});
