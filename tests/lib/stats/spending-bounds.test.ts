import { describe, expect, it } from "vitest";
import { crossingChances } from "@/lib/stats/crossing-chances";
import { normalQuantile } from "@/lib/stats/normal-distribution";
import { spendingBounds } from "@/lib/stats/spending-bounds";
import { spentError } from "@/lib/stats/spent-error";
import { expectNear } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

const equal = (count: number) => Array.from({ length: count }, (_, look) => (look + 1) / count);

describe("reference", () => {
  // Reboussin, DeMets, Kim & Lan (2000), Controlled Clinical Trials 21, 190-207: two-sided .05, equal looks; from memory.
  it("two-sided .05 at 2, 3, 4, 5 equal looks", () => {
    const printed = [
      [2.9626, 1.9686],
      [3.7103, 2.5114, 1.993],
      [4.3326, 2.9631, 2.359, 2.0141],
      [4.8769, 3.3569, 2.6803, 2.2898, 2.031],
    ];
    for (const bounds of printed)
      for (const [look, bound] of spendingBounds(equal(bounds.length), 0.05).entries())
        expectNear(bound, bounds[look] ?? 0, { abs: 1.5e-4 }, `${bounds.length} looks, look ${look}`);
  });
  // The printed example of the Julia package SeqBounds (README): one-sided .05, which is two-sided .10 but for those who pass below first.
  it("one side of .05 at .25, .5, .75 and 1: 3.74955, 2.53993, 2.01604, 1.72014", () => {
    const printed = [3.74955, 2.53993, 2.01604, 1.72014];
    for (const [look, bound] of spendingBounds(equal(4), 0.1).entries())
      expectNear(bound, printed[look] ?? 0, { abs: 5e-4 }, String(look));
  });
});

describe("too little and bad input", () => {
  it("a single look has the bound of one", () => {
    expectNear(spendingBounds([1], 0.05)[0] ?? 0, normalQuantile(0.975), { abs: 1e-7 });
  });
  it("a look so early that nothing may be spent asks nothing", () => {
    expect(spendingBounds([0.01, 1], 0.05)[0]).toBe(Number.POSITIVE_INFINITY);
  });
  it("shares that fall and a level of 0 are refused", () => {
    expect(() => spendingBounds([0.6, 0.4], 0.05)).toThrow("got 0.4 after 0.6");
    expect(() => spendingBounds([0.6, 1], 0)).toThrow("got 0");
  });
});

describe("invariance", () => {
  it("up to each look just what may be spent is spent, at uneven looks too", () => {
    const fractions = [0.2, 0.55, 0.6, 1];
    let spent = 0;
    for (const [look, { up, down }] of crossingChances(fractions, spendingBounds(fractions, 0.04), 0).entries()) {
      spent += up + down;
      expectNear(spent, spentError(fractions[look] ?? 1, 0.04), { abs: 1e-7 });
    }
  });
});

describe("calibration", () => {
  it("20000 walks without drift, three equal looks: 5 of 100 are ever passed, within 4 standard errors (.0062)", () => {
    const normal = seededNormals(31);
    const bounds = spendingBounds(equal(3), 0.05);
    const runs = 20_000;
    let passed = 0;
    for (let run = 0; run < runs; run++) {
      let sum = 0;
      const ever = bounds.some((bound, look) => {
        sum += normal();
        return Math.abs(sum) / Math.sqrt(look + 1) >= bound;
      });
      if (ever) passed++;
    }
    expectNear(passed / runs, 0.05, { abs: monteCarloBand(0.05, runs) });
  });
});
