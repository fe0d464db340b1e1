import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type TTestPlan, tTestPower } from "@/lib/stats/t-test-power";
import { tTestSize } from "@/lib/stats/t-test-size";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

const plan: TTestPlan = { design: "two-sample", sides: "two-sided", effect: 0.5, level: 0.05 };

function sizeOf(one: TTestPlan, power: number): { exact: number; whole: number } {
  const size = tTestSize(one, power);
  if (size.kind !== "ok") throw new Error(`expected a size, got ${JSON.stringify(size)}`);
  return size;
}

describe("reference: Cohen (1988), Table 2.4.1, and R 4.2.2, power.t.test", () => {
  // Cohen prints 393 for an effect of 0.2, by interpolation; the exact number is 393.41, so 394 values of each list.
  it("effects 0.2, 0.5, 0.8 take 394, 64 and 26 values of each of two lists for a power of 0.8", () => {
    const [one] = readReference<
      { d: number[]; power: number; alpha: number },
      { n_real: number[]; n_rounded_up: number[] }
    >("09_power", "cohen_n");
    if (!one) throw new Error("no case");
    const sizes = one.input.d.map((effect) => sizeOf({ ...plan, effect, level: one.input.alpha }, one.input.power));
    expectAllNear(
      sizes.map((size) => size.exact),
      one.expected.n_real,
      one.tolerance,
      "exact",
    );
    expect(sizes.map((size) => size.whole)).toEqual(one.expected.n_rounded_up);
    const printed = (one.published as { n_rounded_up: number[] }).n_rounded_up;
    expect(sizes.map((size) => size.whole).slice(1)).toEqual(printed.slice(1));
    expect(printed[0]).toBe(393);
  });
});

describe("too little and bad input", () => {
  it("no effect, or one that points down in a one-sided test, is out of reach of ten million", () => {
    expect(tTestSize({ ...plan, effect: 0 }, 0.8)).toEqual({ kind: "out-of-reach", most: 1e7 });
    expect(tTestSize({ ...plan, sides: "one-sided", effect: -1 }, 0.8)).toEqual({ kind: "out-of-reach", most: 1e7 });
  });

  it("an effect of 100 sds takes no more than the two values of a test", () => {
    expect(tTestSize({ ...plan, effect: 100 }, 0.8)).toEqual({ kind: "ok", exact: 2, whole: 2 });
  });

  it("a power of 80 and a level of 0 are refused", () => {
    expect(() => tTestSize(plan, 80)).toThrow("power must lie between 0 and 1, got 80");
    expect(() => tTestSize({ ...plan, level: 0 }, 0.8)).toThrow("level must lie between 0 and 1, got 0");
  });
});

describe("invariance", () => {
  it("the exact number has the wanted power; the whole one has it and one fewer has not", () => {
    const designs = fc.constantFrom("one-sample" as const, "paired" as const, "two-sample" as const);
    const sides = fc.constantFrom("one-sided" as const, "two-sided" as const);
    fc.assert(
      fc.property(
        designs,
        sides,
        fc.double({ min: 0.2, max: 1.5, noNaN: true }),
        fc.double({ min: 0.3, max: 0.95, noNaN: true }),
        (design, side, effect, power) => {
          const one: TTestPlan = { ...plan, design, sides: side, effect };
          const size = sizeOf(one, power);
          if (size.exact > 2) expectNear(answerOf(tTestPower(one, size.exact)), power, { rel: 1e-9 });
          expect(answerOf(tTestPower(one, size.whole))).toBeGreaterThanOrEqual(power * (1 - 1e-12));
          if (size.whole > 2) expect(answerOf(tTestPower(one, size.whole - 1))).toBeLessThan(power);
        },
      ),
      { numRuns: 20 },
    );
  });
});

describe("calibration", () => {
  it("one-sided, effect 1: 8 values have a power of 0.8; 4000 lists of 8 with mean 1 pass t(7) = 1.895 as often, within 4 standard errors (.025)", () => {
    const normal = seededNormals(17);
    const one: TTestPlan = { design: "one-sample", sides: "one-sided", effect: 1, level: 0.05 };
    const { whole } = sizeOf(one, 0.8);
    expect(whole).toBe(8);
    const runs = 4000;
    let found = 0;
    for (let run = 0; run < runs; run++) {
      const drawn = Array.from({ length: whole }, () => 1 + normal());
      const mean = drawn.reduce((sum, value) => sum + value, 0) / whole;
      const sd = Math.sqrt(drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (whole - 1));
      if ((mean / sd) * Math.sqrt(whole) > 1.894579) found++;
    }
    const power = answerOf(tTestPower(one, whole));
    expectNear(found / runs, power, { abs: monteCarloBand(power, runs) }, "found");
  });
});
