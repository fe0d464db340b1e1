import { describe, expect, it } from "vitest";
import { normalCdf } from "@/lib/stats/normal-distribution";
import { normalMixture } from "@/lib/stats/normal-mixture";
import { shareInBand } from "@/lib/stats/share-in-band";

const at = (mean: number, sd: number) =>
  normalMixture(Float64Array.of(1), Float64Array.of(mean), Float64Array.of(sd * sd));
const spread = { replicateSd: 3, readingErrorSd: 1, step: 0 };
const day = { values: [1.5], weights: [1] };

describe("reference", () => {
  it("level known to be 1, spread known well: near Phi(4 / s) - Phi(-4 / s), s^2 = 1.5^2 + 9 - 1", () => {
    const share = shareInBand(at(1, 1e-6), day, spread, 1000, { low: -3, high: 5 });
    const s = Math.sqrt(2.25 + 8);
    expect(Math.abs(share.estimate - (normalCdf(4 / s) - normalCdf(-4 / s)))).toBeLessThan(0.01);
    expect(share.high95 - share.low95).toBeLessThan(0.2);
  });
  it("a level at the band's centre: the interval may end at the most that is possible", () => {
    const share = shareInBand(at(0, 2), day, spread, 30, { low: -5, high: 5 });
    expect(share.low95).toBeLessThan(share.low80);
    expect(share.high95).toBeGreaterThanOrEqual(share.high80);
    expect(share.high80).toBeGreaterThan(share.estimate);
  });
  it("two day sds half and half lie between each alone", () => {
    const mixed = shareInBand(at(0, 0.1), { values: [4, 0.5], weights: [1, 1] }, spread, 60, { low: -3, high: 3 });
    const quiet = shareInBand(at(0, 0.1), { values: [0.5], weights: [1] }, spread, 60, { low: -3, high: 3 });
    const loud = shareInBand(at(0, 0.1), { values: [4], weights: [1] }, spread, 60, { low: -3, high: 3 });
    expect(mixed.low95).toBeLessThan(quiet.low95);
    expect(mixed.high95).toBeGreaterThan(loud.high95);
  });
});

describe("too little and bad input", () => {
  it("no edges hold all; a band beyond reach holds none; edges the wrong way round throw", () => {
    expect(shareInBand(at(0, 1), day, spread, 30, { low: null, high: null }).low95).toBe(1);
    expect(shareInBand(at(0, 1), day, spread, 30, { low: 900, high: 901 }).high95).toBe(0);
    expect(() => shareInBand(at(0, 1), day, spread, 30, { low: 2, high: 1 })).toThrow("2 > 1");
  });
});

describe("invariance", () => {
  it("mirroring level and band changes nothing beyond 1e-6; inside and outside sum to 1", () => {
    const there = shareInBand(at(2, 1), day, spread, 12, { low: -1, high: 6 });
    const back = shareInBand(at(-2, 1), day, spread, 12, { low: -6, high: 1 });
    for (const key of ["estimate", "low80", "high80", "low95", "high95"] as const)
      expect(back[key]).toBeCloseTo(there[key], 5);
    const below = shareInBand(at(2, 1), day, spread, 12, { low: null, high: 3 });
    const above = shareInBand(at(2, 1), day, spread, 12, { low: 3, high: null });
    expect(below.estimate + above.estimate).toBeCloseTo(1, 5);
  });
});
