import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type OneWayAnova, oneWayAnova } from "@/lib/stats/one-way-anova";
import { alternating, answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Input {
  readonly groups?: Record<string, number[]>;
  readonly treatments?: { first: number; then_alternate: [number, number]; n: number }[];
}
type Expected = Record<string, number>;

function groupsOf({ groups, treatments }: Input): number[][] {
  if (groups) return Object.values(groups);
  return (treatments ?? []).map((one) => alternating(one.first, one.then_alternate, one.n));
}

/** Results under the names that the reference files give them. */
function named(anova: OneWayAnova): Expected {
  const ratios = answerOf(anova.ratios);
  return {
    df_between: anova.degreesBetween,
    df_within: anova.degreesWithin,
    SSB: anova.squaresBetween,
    SSW: anova.squaresWithin,
    MSB: anova.meanSquareBetween,
    MSW: anova.meanSquareWithin,
    F: ratios.f,
    R2: ratios.rSquared,
    residual_sd: anova.residualSd,
    n0: anova.effectiveSize,
    var_between_anova: anova.betweenVariance,
    icc1_single: ratios.reliabilityOfOne,
    icc1_mean_of_n0: answerOf(ratios.reliabilityOfMean),
    grand_mean: anova.grandMean,
  };
}

describe("reference: NIST Statistical Reference Datasets, analysis of variance (certified)", () => {
  const cases = readReference<Input, Expected>("01b_anova_nist");

  it.each(cases)("$id: every entry of the table within the file's tolerance", (one) => {
    const got = named(answerOf(oneWayAnova(groupsOf(one.input))));
    for (const [key, value] of Object.entries(one.expected)) expectNear(got[key] as number, value, one.tolerance, key);
  });

  it.each(cases)("$id: against exact arithmetic on the doubles themselves", (one) => {
    const got = named(answerOf(oneWayAnova(groupsOf(one.input))));
    const exact = one.expected_from_doubles as Expected;
    for (const [key, value] of Object.entries(exact)) {
      expectNear(got[key] as number, value, { rel: one.tolerance.vs_doubles_rel as number }, key);
    }
  });
});

describe("too little and bad input", () => {
  it("one group is too few of 2; two groups of one value are 2 of 3 values", () => {
    expect(oneWayAnova([[1, 2]])).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(oneWayAnova([[1], [2]])).toEqual({ kind: "too-few", have: 2, need: 3 });
  });

  it("no spread within any group leaves the ratios open: 0 of 1 groups that hold two different values", () => {
    const anova = answerOf(
      oneWayAnova([
        [1, 1],
        [2, 2],
      ]),
    );
    expect(anova.squaresBetween).toBe(1);
    expect(anova.ratios).toEqual({ kind: "too-few", have: 0, need: 1 });
  });

  it("equal means give F 0 and p 1, and no reliability of a mean", () => {
    const ratios = answerOf(
      answerOf(
        oneWayAnova([
          [1, 3],
          [3, 1],
        ]),
      ).ratios,
    );
    expect([ratios.f, ratios.p]).toEqual([0, 1]);
    expect(ratios.reliabilityOfMean.kind).toBe("too-few");
  });

  it("an empty group, NaN and infinity are refused", () => {
    expect(() => oneWayAnova([[1, 2], []])).toThrow("groups[1] must hold at least one value, got none");
    expect(() => oneWayAnova([[1], [2, Number.NaN]])).toThrow("groups[1][1] must be a finite number");
  });
});

describe("invariance", () => {
  const group = fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 2, maxLength: 8 });
  const groups = fc.array(group, { minLength: 2, maxLength: 6 });

  it("between and within add up to the whole sum of squares, brute force", () => {
    fc.assert(
      fc.property(groups, (lists) => {
        const all = lists.flat();
        const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
        const whole = all.reduce((sum, value) => sum + (value - mean) ** 2, 0);
        const anova = answerOf(oneWayAnova(lists));
        expectNear(anova.squaresBetween + anova.squaresWithin, whole, { rel: 1e-12, abs: 1e-9 });
      }),
    );
  });

  it("order within groups, order of groups, a shift and a scale leave F alone", () => {
    fc.assert(
      fc.property(groups, (lists) => {
        const before = answerOf(oneWayAnova(lists)).ratios;
        const moved = lists.map((list) => [...list].reverse().map((value) => 3 * value + 1000)).reverse();
        const after = answerOf(oneWayAnova(moved)).ratios;
        expect(after.kind).toBe(before.kind);
        if (before.kind === "ok") expectNear(answerOf(after).f, before.value.f, { rel: 1e-10, abs: 1e-10 });
      }),
    );
  });
});

describe("calibration", () => {
  it("5 groups of 4 with one mean: p is below 0.05 in 5 of 100 of 2000 runs, within 0.05 +/- 4 x 0.0049", () => {
    const normal = seededNormals(20240611);
    const runs = 2000;
    let alarms = 0;
    for (let run = 0; run < runs; run++) {
      const drawn = Array.from({ length: 5 }, () => Array.from({ length: 4 }, normal));
      if (answerOf(answerOf(oneWayAnova(drawn)).ratios).p < 0.05) alarms++;
    }
    expectNear(alarms / runs, 0.05, { abs: monteCarloBand(0.05, runs) }, "false alarms");
  });

  it("2000 groups with sd 3 between and 2 within: the components come out at 9 and 4 within a tenth", () => {
    const normal = seededNormals(7);
    const drawn = Array.from({ length: 2000 }, () => {
      const level = 3 * normal();
      return Array.from({ length: 4 }, () => level + 2 * normal());
    });
    const anova = answerOf(oneWayAnova(drawn));
    expectNear(anova.betweenVariance, 9, { rel: 0.1 }, "between");
    expectNear(anova.meanSquareWithin, 4, { rel: 0.1 }, "within");
  });
});
