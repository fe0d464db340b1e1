import { describe, expect, it } from "vitest";
import { looksSize } from "@/lib/stats/looks-size";
import { spendingBounds } from "@/lib/stats/spending-bounds";
import { tTestSize } from "@/lib/stats/t-test-size";
import { expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

const plan = { effect: 0.5, looks: 1, level: 0.05, power: 0.8 };
function exactOf(design: typeof plan): number {
  const size = looksSize(design);
  if (size.kind !== "ok") throw new Error(JSON.stringify(size));
  return size.exact;
}

describe("reference", () => {
  it("a single look is a t test: 393.4, 63.8 and 25.5 of each arm for effects .2, .5, .8 (R 4.2.2, power.t.test; Cohen (1988), 2.4.1)", () => {
    const [one] = readReference<{ d: number[] }, { n_real: number[] }>("09_power", "cohen_n");
    if (!one) throw new Error("no case");
    expectAllNear(
      one.input.d.map((effect) => exactOf({ ...plan, effect })),
      one.expected.n_real,
      one.tolerance,
      "exact",
    );
  });
  // Drift 3.2788 for a power of .9 at five equal looks, two-sided .05: Reboussin, DeMets, Kim & Lan (2000), from memory.
  it("five looks and a power of .9 cost (3.2788 / 3.2415)^2 = 1.0231 times one", () => {
    const [five, once] = [5, 1].map((looks) => exactOf({ ...plan, looks, power: 0.9 }));
    expectNear((five ?? 0) / (once ?? 1), (3.2788 / 3.24152) ** 2, { abs: 3e-4 });
  });
});

describe("too little and bad input", () => {
  it("an effect of a ten-thousandth is out of reach of ten million", () => {
    expect(looksSize({ ...plan, effect: 1e-4, looks: 3 }).kind).toBe("out-of-reach");
  });
  it("no look, half a look, no effect and a power of 80 are refused", () => {
    expect(() => looksSize({ ...plan, looks: 0 })).toThrow("got 0");
    expect(() => looksSize({ ...plan, looks: 1.5 })).toThrow("got 1.5");
    expect(() => looksSize({ ...plan, effect: 0 })).toThrow("got 0");
    expect(() => looksSize({ ...plan, power: 80 })).toThrow("got 80");
  });
});

describe("invariance", () => {
  it("one look is the t test's own size, and each look more costs more, at most a thirtieth at five", () => {
    const once = tTestSize({ design: "two-sample", sides: "two-sided", effect: 0.5, level: 0.05 }, 0.8);
    expect(looksSize(plan)).toEqual(once);
    const sizes = [1, 2, 3, 4, 5].map((looks) => exactOf({ ...plan, looks }));
    for (const [i, size] of sizes.slice(1).entries()) expect(size).toBeGreaterThan(sizes[i] ?? 0);
    expect((sizes[4] ?? 0) / (sizes[0] ?? 1)).toBeLessThan(1 + 1 / 30);
  });
});

describe("calibration", () => {
  it("6000 comparisons of the size for an effect of .5, three looks: 80 of 100 pass a bound, within 4 standard errors (.021) and .01 for the t test's tails", () => {
    const normal = seededNormals(41);
    const size = looksSize({ ...plan, looks: 3 });
    if (size.kind !== "ok") throw new Error("no size");
    const each = Math.ceil(size.whole / 3);
    const bounds = spendingBounds([1 / 3, 2 / 3, 1], 0.05);
    const runs = 6000;
    let found = 0;
    for (let run = 0; run < runs; run++) {
      const arms = [0, 0.5].map((shift) => Array.from({ length: 3 * each }, () => shift + normal()));
      const passes = bounds.some((bound, look) => {
        const n = each * (look + 1);
        const [a, b] = arms.map((arm) => {
          const part = arm.slice(0, n);
          const mean = part.reduce((sum, value) => sum + value, 0) / n;
          return { mean, square: part.reduce((sum, value) => sum + (value - mean) ** 2, 0) };
        });
        if (!a || !b) return false;
        return (b.mean - a.mean) / Math.sqrt(((a.square + b.square) / (2 * n - 2)) * (2 / n)) >= bound;
      });
      if (passes) found++;
    }
    expectNear(found / runs, 0.8, { abs: monteCarloBand(0.8, runs) + 0.01 });
  });
});
