import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { tQuantile } from "@/lib/stats/t-distribution";
import { type TTestPlan, tTestPower } from "@/lib/stats/t-test-power";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

const plan: TTestPlan = { design: "two-sample", sides: "two-sided", effect: 0.5, level: 0.05 };

describe("reference: R 4.2.2, power.t.test", () => {
  it("two lists of 5, 10, 20, 64 and effects 0.2, 0.5, 0.8, 1.2, both tails counted", () => {
    const [one] = readReference<{ n_per_group: number[]; d: number[]; alpha: number }, { power: number[] }>(
      "09_power",
      "two_sample_power_grid",
    );
    if (!one) throw new Error("no case");
    const { n_per_group: sizes, d, alpha } = one.input;
    const got = sizes.map((size, i) => answerOf(tTestPower({ ...plan, effect: d[i] as number, level: alpha }, size)));
    expectAllNear(got, one.expected.power, one.tolerance, "power");
  });

  it.each(["one-sample", "paired"] as const)("%s, 6 to 40 values, effect 0.6, one-sided and two-sided", (design) => {
    const [one] = readReference<
      { n: number[]; d: number; alpha: number },
      { two_sided: number[]; one_sided: number[] }
    >("09_power", "paired_power");
    if (!one) throw new Error("no case");
    const { n, d, alpha } = one.input;
    const got = (sides: TTestPlan["sides"]) =>
      n.map((size) => answerOf(tTestPower({ design, sides, effect: d, level: alpha }, size)));
    expectAllNear(got("two-sided"), one.expected.two_sided, one.tolerance, "two-sided");
    expectAllNear(got("one-sided"), one.expected.one_sided, one.tolerance, "one-sided");
  });
});

describe("too little and bad input", () => {
  it("one value is too few of 2", () => {
    expect(tTestPower(plan, 1)).toEqual({ kind: "too-few", have: 1, need: 2 });
  });

  it("a size of 0, a level of 5 and an endless effect are refused", () => {
    expect(() => tTestPower(plan, 0)).toThrow("size must be above 0 and finite, got 0");
    expect(() => tTestPower({ ...plan, level: 5 }, 9)).toThrow("level must lie between 0 and 1, got 5");
    expect(() => tTestPower({ ...plan, effect: Number.NaN }, 9)).toThrow("effect must be a finite number, got NaN");
  });
});

describe("invariance", () => {
  const sizes = fc.integer({ min: 2, max: 60 });
  const effects = fc.double({ min: 0, max: 2, noNaN: true });

  it("no effect is found as often as the level says; more values and larger effects are found more often", () => {
    fc.assert(
      fc.property(sizes, effects, (size, effect) => {
        expectNear(answerOf(tTestPower({ ...plan, effect: 0 }, size)), 0.05, { rel: 1e-10 });
        const power = answerOf(tTestPower({ ...plan, effect }, size));
        expect(answerOf(tTestPower({ ...plan, effect }, size + 1))).toBeGreaterThanOrEqual(power - 1e-12);
        expect(answerOf(tTestPower({ ...plan, effect: effect + 0.1 }, size))).toBeGreaterThanOrEqual(power - 1e-12);
      }),
      { numRuns: 50 },
    );
  });

  it("two-sided, the direction of the effect is nothing; it is the one-sided power of half the level and of its mirror", () => {
    fc.assert(
      fc.property(sizes, effects, (size, effect) => {
        const power = answerOf(tTestPower({ ...plan, effect }, size));
        expectNear(answerOf(tTestPower({ ...plan, effect: -effect }, size)), power, { rel: 1e-11 });
        const half = (way: number) =>
          answerOf(tTestPower({ ...plan, sides: "one-sided", effect: way * effect, level: 0.025 }, size));
        expectNear(half(1) + half(-1), power, { rel: 1e-11 });
      }),
      { numRuns: 50 },
    );
  });
});

describe("calibration", () => {
  it("4000 pairs of lists of 10, 0.8 sds apart: found as often as the power 0.395 says, within 4 standard errors (.031)", () => {
    const normal = seededNormals(3);
    const runs = 4000;
    const critical = -tQuantile(0.025, 18);
    let found = 0;
    for (let run = 0; run < runs; run++) {
      const [first, second] = [0, 0.8].map((level) => {
        const drawn = Array.from({ length: 10 }, () => level + normal());
        const mean = drawn.reduce((sum, value) => sum + value, 0) / 10;
        return { mean, squares: drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) };
      }) as [{ mean: number; squares: number }, { mean: number; squares: number }];
      const sd = Math.sqrt((first.squares + second.squares) / 18);
      if (Math.abs(second.mean - first.mean) > critical * sd * Math.sqrt(0.2)) found++;
    }
    const power = answerOf(tTestPower({ ...plan, effect: 0.8 }, 10));
    expectNear(found / runs, power, { abs: monteCarloBand(power, runs) }, "found");
  });
});
