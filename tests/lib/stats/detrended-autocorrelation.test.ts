import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { detrendedAutocorrelation } from "@/lib/stats/detrended-autocorrelation";
import { answerOf, expectAllNear, expectNear, readNile, readReference } from "@/tests/reference/read-reference";
import { seededNormals } from "./seeded-normals";

describe("reference: the Nile, pyMannKendall 1.4.2", () => {
  it("ranks: 0.356 at lag 1, 0.234 at 2, 0.203 at 3, and lags 33 to 35", () => {
    const [one] = readReference<
      unknown,
      { all_lags: { significant_lags: number[]; rho_at_significant_lags: number[] } }
    >("03c_trend", "nile_hamed_rao");
    if (!one) throw new Error("missing");
    const { significant_lags, rho_at_significant_lags } = one.expected.all_lags;
    const got = answerOf(detrendedAutocorrelation(readNile(), "ranks"));
    expectAllNear(
      significant_lags.map((lag) => got[lag - 1] as number),
      rho_at_significant_lags,
      one.tolerance,
    );
  });
  it("values: 0.375 at lag 1", () => {
    const [one] = readReference<unknown, { rho1: number }>("03c_trend", "nile_yue_wang");
    if (!one) throw new Error("missing");
    expectNear(answerOf(detrendedAutocorrelation(readNile(), "values"))[0] as number, one.expected.rho1, one.tolerance);
  });
});

describe("too little and bad input", () => {
  it("one value is 1 of 2; a straight line in tenths leaves 1 of 2 different residuals", () => {
    expect(detrendedAutocorrelation([1], "ranks")).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(detrendedAutocorrelation([], "values")).toEqual({ kind: "too-few", have: 0, need: 2 });
    const line = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7];
    expect(detrendedAutocorrelation(line, "values")).toEqual({ kind: "too-few", have: 1, need: 2 });
  });
  it("NaN is refused", () => {
    expect(() => detrendedAutocorrelation([1, Number.NaN, 2], "values")).toThrow("values[1]");
  });
});

describe("invariance", () => {
  it("doubling and turning the series change nothing; all lags sum to -1/2", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 4, maxLength: 14 }), (list) => {
        const before = detrendedAutocorrelation(list, "values");
        const after = detrendedAutocorrelation(
          [...list].reverse().map((value) => 2 * value),
          "values",
        );
        expect(after.kind).toBe(before.kind);
        if (before.kind !== "ok") return;
        expectAllNear(answerOf(after), before.value, { abs: 1e-9 });
        expectNear(
          before.value.reduce((sum, rho) => sum + rho, 0),
          -0.5,
          { abs: 1e-9 },
        );
      }),
    );
  });
});

describe("calibration", () => {
  it("one first-order series of 400 with 0.6: 0.6 at lag 1 within four standard errors, 4 x sqrt((1 - 0.36) / 400) = 0.16", () => {
    const normal = seededNormals(1998);
    let level = normal();
    const series = Array.from({ length: 400 }, () => {
      level = 0.6 * level + 0.8 * normal();
      return level;
    });
    expectNear(answerOf(detrendedAutocorrelation(series, "values"))[0] as number, 0.6, { abs: 0.16 });
  });
});
