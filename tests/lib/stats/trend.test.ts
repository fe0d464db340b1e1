import { describe, expect, it } from "vitest";
import type { NoiseModel } from "@/lib/stats/noise-model";
import type { Series } from "@/lib/stats/series";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { tQuantile } from "@/lib/stats/t-distribution";
import { trend } from "@/lib/stats/trend";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { madeNoise, madeSeries, SMALL_GRID, seeded, simulatedSeries, transformed } from "./made-series";

const said = (series: Series, noise: NoiseModel) => answerOf(trend(series, noise));

interface LakeHuron {
  readonly y: number[];
  readonly t: number[] | string;
}
interface GlsFit {
  readonly coef: [number, number];
  readonly se: [number, number];
  readonly phi: number;
  readonly sigma: number;
}

describe("reference: ordinary least squares where days are uncorrelated and variances equal", () => {
  it("values 1 3 2 5 4 a week apart: slope 0.8 / 7 a day, +- t(3) sqrt(v / 490), v = 1 + 0.25 + 4", () => {
    const one = said(madeSeries([[1], [3], [2], [5], [4]]), madeNoise([{ daySd: 1 }], 2));
    expect(one.perDay).toBeCloseTo(0.8 / 7, 7);
    const half = tQuantile(0.975, 3) * Math.sqrt(5.25 / 490);
    expect(one.low95).toBeCloseTo(0.8 / 7 - half, 6);
    expect(one.high95).toBeCloseTo(0.8 / 7 + half, 6);
  });
});

describe("reference: R nlme 3.1-162, gls with AR(1) errors, on the level of Lake Huron 1875 to 1972", () => {
  // One cell at the fitted correlation and sd, readings all but exact: the slope, and t(n - 2) times its error. By maximum
  // likelihood nlme widens its errors by the root of n / (n - 2).
  const cases = readReference<LakeHuron, GlsFit>("03d_trend_regression", "lakehuron").filter((one) => one.expected.phi);

  it.each(cases)("$id: slope and half-width within the file's tolerance", ({ id, input, expected, tolerance }) => {
    const years = Array.isArray(input.t) ? input.t : input.y.map((_, i) => i);
    const groups = input.y.map((level, i) => ({
      day: years[i] as number,
      values: [level],
      sharedErrorSd: 0,
      sharedErrorLabel: null,
      offsetLabel: null,
      used: true,
    }));
    const series: Series = { groups, readingErrorSd: 1e-4, offsetSd: 0, start: null };
    const noise = madeNoise([{ daySd: expected.sigma, correlation: expected.phi ** 10, fadesBy: "days" }], 1e-4);
    const one = said(series, noise);
    const count = input.y.length;
    const error = (one.high95 - one.low95) / 2 / tQuantile(0.975, count - 2);
    const widened = id.endsWith("reml") ? 1 : Math.sqrt(count / (count - 2));
    expectNear(one.perDay, expected.coef[1], tolerance, "slope");
    expectNear(error * widened, expected.se[1], tolerance, "error of the slope");
  });
});

describe("too little and bad input", () => {
  it("0 to 2 groups: too few of 3; all on one day: one day of 2; NaN throws", () => {
    for (let n = 0; n < 3; n++)
      expect(trend(madeSeries(new Array(n).fill([1])), SMALL_GRID)).toEqual({ kind: "too-few", have: n, need: 3 });
    const series = madeSeries([[1], [2], [3], [4]]);
    const sameDay = { ...series, groups: series.groups.map((group) => ({ ...group, day: 5 })) };
    expect(trend(sameDay, SMALL_GRID)).toEqual({ kind: "too-few", have: 1, need: 2 });
    expect(() => trend(madeSeries([[Number.NaN]]), SMALL_GRID)).toThrow("NaN");
  });
  it("constant values: slope 0, finite interval", () => {
    for (let n = 3; n <= 6; n++) {
      const one = said(madeSeries(new Array(n).fill([7]), 0), startNoiseModel("s"));
      expect(one.perDay).toBeCloseTo(0, 9);
      expect(one.high95).toBeGreaterThan(0);
      expect(Number.isFinite(one.high95)).toBe(true);
    }
  });
});

describe("invariance", () => {
  it("shift does nothing, mirroring and scaling move along, adding a slope adds it", () => {
    const series = simulatedSeries({ groups: 9 }, seeded(3));
    const noise = startNoiseModel("s");
    const before = said(series, noise);
    const after = said(transformed(series, -2, 50), noise);
    expect(after.perDay).toBeCloseTo(-2 * before.perDay, 6);
    expect(after.low95).toBeCloseTo(-2 * before.high95, 6);
    const steeper = series.groups.map((group) => ({ ...group, values: group.values.map((v) => v + 0.5 * group.day) }));
    expect(said({ ...series, groups: steeper }, SMALL_GRID).perDay).toBeCloseTo(
      said(series, SMALL_GRID).perDay + 0.5,
      6,
    );
  });
});

describe("calibration: 300 series of 12 groups, correlation 0.3, slope 0.05 a day", () => {
  it("the 95 % interval covers in .95 of series or more, less 4 standard errors (.05)", () => {
    const random = seeded(9);
    let covered = 0;
    for (let r = 0; r < 300; r++) {
      const series = simulatedSeries({ groups: 12, correlation: 0.3, level: (i) => 0.35 * i }, random);
      const one = said(series, SMALL_GRID);
      if (one.low95 <= 0.05 && 0.05 <= one.high95) covered++;
    }
    expect(covered / 300).toBeGreaterThan(0.9);
  });
});
