import { describe, expect, it } from "vitest";
import { lookData } from "@/lib/stats/look-data";
import { mixtureQuantile } from "@/lib/stats/mixture-quantile";
import { normalMixture } from "@/lib/stats/normal-mixture";
import { posteriorComponents } from "@/lib/stats/posterior-components";
import { posteriorWeights } from "@/lib/stats/posterior-weights";
import { relapseBelief } from "@/lib/stats/relapse-belief";
import { madeSeries, normal, SMALL_GRID, seeded, simulatedSeries } from "./made-series";

const of = (series: ReturnType<typeof madeSeries>) => {
  const look = lookData(series, SMALL_GRID);
  const parts = posteriorComponents(look);
  return { look, parts, plain: posteriorWeights(look, parts).cells, found: relapseBelief(look, parts) };
};
const daySd = (cells: readonly number[], look: { readonly cells: readonly { readonly daySd: number }[] }): number =>
  cells.reduce((sum, weight, g) => sum + weight * (look.cells[g] as { daySd: number }).daySd, 0);

describe("reference", () => {
  it("a change that came and went isn't taken for large day effects, and the level is the old one", () => {
    const random = seeded(8);
    const level = (group: number): number => (group >= 8 && group < 14 ? 7 : 0);
    const { look, plain, found } = of(simulatedSeries({ groups: 24, daySd: 0.6, level }, random));
    expect(daySd(found.cells, look)).toBeLessThan(0.75 * daySd(plain, look));
    expect(Math.abs(mixtureQuantile(found.level, 0.5) + look.origin)).toBeLessThan(1.2);
  });
  it("without one, belief stays what it was to a few hundredths", () => {
    const random = seeded(9);
    const { look, plain, found } = of(simulatedSeries({ groups: 24 }, random));
    expect(Math.abs(daySd(found.cells, look) - daySd(plain, look))).toBeLessThan(0.05);
  });
});

describe("too little and invariance", () => {
  it("under nine groups nothing is added", () => {
    const random = seeded(10);
    const { parts, plain, found } = of(madeSeries(Array.from({ length: 8 }, () => [normal(random), normal(random)])));
    const own = normalMixture(parts.weights, parts.levelMeans, parts.levelVariances);
    expect(mixtureQuantile(found.level, 0.3)).toBeCloseTo(mixtureQuantile(own, 0.3), 12);
    found.cells.forEach((weight, g) => {
      expect(weight).toBeCloseTo(plain[g] as number, 12);
    });
  });
  it("weights sum to 1 and stay numbers with a stretch a thousand sds away", () => {
    const values = Array.from({ length: 20 }, (_, i) => [i >= 8 && i < 14 ? 3000 : 0.1 * i, 0]);
    const { found } = of(madeSeries(values));
    expect(found.cells.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(Number.isFinite(mixtureQuantile(found.level, 0.5))).toBe(true);
  });
});
