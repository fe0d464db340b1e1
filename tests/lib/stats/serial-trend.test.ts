import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { serialTrend } from "@/lib/stats/serial-trend";
import { expectNear, readNile, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

describe("reference", () => {
  it("the Nile with the inflation 1.742 that its first lag gives: z -3.127, p 0.00176 (pyMannKendall 1.4.2's arithmetic)", () => {
    const [one] = readReference<
      unknown,
      { lag1_only: { n_over_nstar: number; varS_corrected: number; z: number; p_two_sided: number } }
    >("03c_trend", "nile_yue_wang");
    if (!one) throw new Error("missing");
    const { n_over_nstar, varS_corrected, z, p_two_sided } = one.expected.lag1_only;
    const got = serialTrend(readNile(), n_over_nstar);
    if (got.kind !== "ok") throw new Error(got.kind);
    expect(got.value.s).toBe(-1387);
    expectNear(got.value.variance, varS_corrected, one.tolerance, "variance");
    expectNear(got.value.z, z, one.tolerance, "z");
    expectNear(got.value.p, p_two_sided, one.tolerance, "p");
  });
});

describe("too little and bad input", () => {
  it("two values are 2 of 3; an inflation of 0 or -0.5 leaves no variance; NaN is refused", () => {
    expect(serialTrend([1, 2], 1)).toEqual({ kind: "too-few", have: 2, need: 3 });
    expect(serialTrend([1, 2, 4], 0)).toEqual({ kind: "no-variance", inflation: 0 });
    expect(serialTrend([1, 2, 4], -0.5)).toEqual({ kind: "no-variance", inflation: -0.5 });
    expect(() => serialTrend([1, 2, 4], Number.NaN)).toThrow("got NaN");
    expect(() => serialTrend([1, Number.NaN, 4], 1)).toThrow("values[1]");
  });
  it("values all equal are an answer: S 0, p 1", () => {
    const got = serialTrend([5, 5, 5, 5], 2);
    expect(got.kind === "ok" && [got.value.s, got.value.p]).toEqual([0, 1]);
  });
});

describe("invariance", () => {
  it("four times the variance halves z; turning the series turns its sign", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 3, maxLength: 14 }), (list) => {
        const one = serialTrend(list, 1);
        const four = serialTrend([...list].reverse(), 4);
        if (one.kind !== "ok" || four.kind !== "ok") throw new Error("expected answers");
        expectNear(four.value.z, -one.value.z / 2, { rel: 1e-12, abs: 1e-12 });
        expectNear(four.value.variance, 4 * one.value.variance, { rel: 1e-12 });
      }),
    );
  });
});

describe("calibration", () => {
  it("2000 independent series of 60, inflation 1: p at or below 0.05 in 5 of 100, within 4 x 0.0049", () => {
    const normal = seededNormals(2004);
    const runs = 2000;
    let alarms = 0;
    for (let run = 0; run < runs; run++) {
      const got = serialTrend(Array.from({ length: 60 }, normal), 1);
      if (got.kind === "ok" && got.value.p <= 0.05) alarms++;
    }
    expectNear(alarms / runs, 0.05, { abs: monteCarloBand(0.05, runs) });
  });
});
