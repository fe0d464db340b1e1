import { describe, expect, it } from "vitest";
import { requireNoiseModel, requireSeries } from "@/lib/stats/require-series";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { madeNoise, madeSeries } from "./made-series";

const good = madeSeries([[1, 2], [3]]);
const withGroup = (change: object) => ({
  ...good,
  groups: good.groups.map((group, i) => (i === 1 ? { ...group, ...change } : group)),
});

describe("reference: what is sound passes", () => {
  it("a series, an empty series, an unused empty group, a starting belief", () => {
    requireSeries(good);
    requireSeries({ ...good, groups: [] });
    requireSeries(withGroup({ used: false, values: [] }));
    requireSeries({ ...good, start: { mean: 1, sd: 2 } });
    requireNoiseModel(startNoiseModel("s"));
    expect(good.groups).toHaveLength(2);
  });
});

describe("too little and bad input: each refusal names the value", () => {
  it.each([
    [withGroup({ values: [1, Number.NaN] }), "group 1 must be finite: NaN"],
    [withGroup({ values: [Number.POSITIVE_INFINITY] }), "Infinity"],
    [withGroup({ sharedErrorSd: -0.5 }), "-0.5"],
    [withGroup({ sharedErrorSd: Number.NaN }), "NaN"],
    [withGroup({ values: [] }), "group: 1"],
    [withGroup({ day: 1.5 }), "1.5"],
    [withGroup({ day: -3 }), "-3"],
    [{ ...good, readingErrorSd: 0 }, ": 0"],
    [{ ...good, readingErrorSd: -2 }, "-2"],
    [{ ...good, offsetSd: -1 }, "-1"],
    [{ ...good, start: { mean: Number.NaN, sd: 1 } }, "NaN"],
    [{ ...good, start: { mean: 0, sd: 0 } }, ": 0"],
  ])("series %#", (series, message) => {
    expect(() => requireSeries(series)).toThrow(message);
  });
  it.each([
    [madeNoise([{ daySd: 0 }]), ": 0"],
    [madeNoise([{ daySd: Number.NaN }]), "NaN"],
    [madeNoise([{ correlation: 1 }]), ": 1"],
    [madeNoise([{ correlation: -0.1 }]), "-0.1"],
    [madeNoise([{ weight: -1 }, { weight: 2 }]), "-1"],
    [madeNoise([{ weight: 0.5 }]), "0.5"],
    [madeNoise([]), ": 0"],
    [madeNoise([{}], -3), "-3"],
  ])("noise model %#", (noise, message) => {
    expect(() => requireNoiseModel(noise)).toThrow(message);
  });
});
