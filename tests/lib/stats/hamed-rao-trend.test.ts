import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hamedRaoTrend } from "@/lib/stats/hamed-rao-trend";
import { mannKendall } from "@/lib/stats/mann-kendall";
import { answerOf, expectNear, readNile, readReference } from "@/tests/reference/read-reference";
import { seededNormals } from "./seeded-normals";

interface Expected {
  readonly n_over_nstar: number;
  readonly varS_corrected: number;
  readonly z: number;
  readonly p_two_sided: number;
}

describe("reference", () => {
  it.each([
    ["all_lags", 99],
    ["three_lags", 3],
  ] as const)("the Nile, %s: inflation, variance, z and p (pyMannKendall 1.4.2)", (key, lags) => {
    const [one] = readReference<unknown, Record<string, Expected>>("03c_trend", "nile_hamed_rao");
    const expected = one?.expected[key];
    if (!one || !expected) throw new Error("missing");
    const got = hamedRaoTrend(readNile(), lags, 0.05);
    if (got.kind !== "ok") throw new Error(got.kind);
    expectNear(got.value.inflation, expected.n_over_nstar, one.tolerance, "inflation");
    expectNear(got.value.variance, expected.varS_corrected, one.tolerance, "variance");
    expectNear(got.value.z, expected.z, one.tolerance, "z");
    expectNear(got.value.p, expected.p_two_sided, one.tolerance, "p");
  });
});

describe("too little and bad input", () => {
  it("two values are 2 of 3; a straight line leaves 1 of 2 different residuals", () => {
    expect(hamedRaoTrend([1, 2], 1, 0.05)).toEqual({ kind: "too-few", have: 2, need: 3 });
    expect(hamedRaoTrend([1, 2, 3, 4], 1, 0.05)).toEqual({ kind: "too-few", have: 1, need: 2 });
  });
  it("no lag, half a lag, as many lags as values and NaN are refused", () => {
    for (const lags of [0, 1.5, 4]) expect(() => hamedRaoTrend([1, 5, 3, 4], lags, 0.05)).toThrow(`got ${lags}`);
    expect(() => hamedRaoTrend([1, Number.NaN, 3, 4], 1, 0.05)).toThrow("values[1]");
  });
});

describe("invariance", () => {
  it("doubling and reversing turn z alone", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 5, maxLength: 14 }), (list) => {
        const before = hamedRaoTrend(list, 2, 0.05);
        const after = hamedRaoTrend(
          [...list].reverse().map((value) => 2 * value),
          2,
          0.05,
        );
        expect(after.kind).toBe(before.kind);
        if (before.kind !== "ok" || after.kind !== "ok") return;
        expectNear(after.value.z, -before.value.z, { rel: 1e-8, abs: 1e-9 });
        expectNear(after.value.inflation, before.value.inflation, { rel: 1e-8 });
      }),
    );
  });
});

describe("calibration", () => {
  it("300 first-order series of 60 with 0.5 and no trend: the plain test alarms above 15 of 100; the correction takes off a quarter or more, and leaves more than 2 of 100", () => {
    const normal = seededNormals(60);
    const runs = 300;
    let plain = 0;
    let corrected = 0;
    for (let run = 0; run < runs; run++) {
      let level = normal();
      const series = Array.from({ length: 60 }, () => {
        level = 0.5 * level + Math.sqrt(0.75) * normal();
        return level;
      });
      if (answerOf(mannKendall([...series.keys()], series)).normalP <= 0.05) plain++;
      const got = hamedRaoTrend(series, 1, 0.05);
      if (got.kind === "ok" && got.value.p <= 0.05) corrected++;
    }
    expect(plain / runs).toBeGreaterThan(0.15);
    expect(corrected / runs).toBeGreaterThan(0.02);
    expect(corrected).toBeLessThan(0.75 * plain);
  });
});
