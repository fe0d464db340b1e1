import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { varianceComponents } from "@/lib/stats/variance-components";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { seededNormals } from "./seeded-normals";

interface Input {
  readonly batch?: string[];
  readonly group?: string[];
  readonly y: number[];
}
interface Expected {
  readonly anova: { readonly n0: number; readonly var_between: number; readonly var_within: number };
  readonly reml: { readonly variance: [number, number] };
}

function groupsOf({ batch, group, y }: Input): number[][] {
  const labels = batch ?? group ?? [];
  return [...new Set(labels)].map((label) => y.filter((_, i) => labels[i] === label));
}

function only(id: string) {
  const [one] = readReference<Input, Expected>("01c_reliability", id);
  if (!one) throw new Error(id);
  return { one, got: answerOf(varianceComponents(groupsOf(one.input))) };
}

describe("reference: Davies & Goldsmith (1972), Pinheiro & Bates (2000) by R lme4 1.1-31", () => {
  it.each(["dyestuff_reml", "rail_reml", "rail_unbalanced"])("%s: n0 and both components", (id) => {
    const { one, got } = only(id);
    expectNear(got.effectiveSize, one.expected.anova.n0, { rel: 1e-12 }, "n0");
    expectNear(got.between, one.expected.anova.var_between, { rel: 1e-12 }, "between");
    expectNear(got.within, one.expected.anova.var_within, { rel: 1e-12 }, "within");
  });
  it.each(["dyestuff_reml", "rail_reml"])("%s: equal groups give restricted maximum likelihood", (id) => {
    const { one, got } = only(id);
    expectNear(got.between, one.expected.reml.variance[0], one.tolerance, "between");
    expectNear(got.within, one.expected.reml.variance[1], one.tolerance, "within");
  });
  it("Rail without five rows: unequal groups give 751.9 between, not the 609.1 of restricted maximum likelihood", () => {
    const { one, got } = only("rail_unbalanced");
    expect(got.between - one.expected.reml.variance[0]).toBeGreaterThan(142);
  });
});

describe("too little and bad input", () => {
  it("one group is too few of 2; two groups of one value are 2 of 3 values", () => {
    expect(varianceComponents([[1, 2]])).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(varianceComponents([[1], [2]])).toEqual({ kind: "too-few", have: 2, need: 3 });
  });
  it("equal means: (0 - 2) / 2 = -1 before the floor, 0 after", () => {
    const got = answerOf(
      varianceComponents([
        [1, 3],
        [3, 1],
      ]),
    );
    expect(got).toEqual({ within: 2, between: 0, betweenUnfloored: -1, effectiveSize: 2 });
  });
  it("an empty group and NaN are refused", () => {
    expect(() => varianceComponents([[1, 2], []])).toThrow("groups[1]");
    expect(() => varianceComponents([[1], [2, Number.NaN]])).toThrow("groups[1][1]");
  });
});

describe("invariance", () => {
  const groups = fc.array(fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 2, maxLength: 6 }), {
    minLength: 2,
    maxLength: 6,
  });
  it("order and a shift change nothing; tripling multiplies both by 9", () => {
    fc.assert(
      fc.property(groups, (lists) => {
        const before = answerOf(varianceComponents(lists));
        const moved = lists.map((list) => [...list].reverse().map((value) => 3 * value + 50)).reverse();
        const after = answerOf(varianceComponents(moved));
        expectNear(after.between, 9 * before.between, { rel: 1e-9, abs: 1e-7 });
        expectNear(after.within, 9 * before.within, { rel: 1e-9, abs: 1e-7 });
      }),
    );
  });
});

describe("calibration", () => {
  it("4000 draws of sizes 1 to 6, sds 1.5 and 2: means of both within four standard errors of 2.25 and 4", () => {
    const normal = seededNormals(31);
    const runs = 4000;
    const drawn = Array.from({ length: runs }, () =>
      answerOf(
        varianceComponents(
          [1, 2, 3, 4, 5, 6].map((size) => {
            const level = 1.5 * normal();
            return Array.from({ length: size }, () => level + 2 * normal());
          }),
        ),
      ),
    );
    const check = (values: number[], truth: number): void => {
      const mean = values.reduce((sum, value) => sum + value, 0) / runs;
      const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (runs - 1);
      expectNear(mean, truth, { abs: 4 * Math.sqrt(variance / runs) });
    };
    check(
      drawn.map((one) => one.betweenUnfloored),
      2.25,
    );
    check(
      drawn.map((one) => one.within),
      4,
    );
  });
});
