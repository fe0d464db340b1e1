import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { emptyCellSums } from "@/lib/stats/cell-sums";
import { filteredSums } from "@/lib/stats/innovation-filter";
import { lookData } from "@/lib/stats/look-data";
import type { NuisanceCell } from "@/lib/stats/nuisance-grid";
import { whitenedSums } from "@/lib/stats/whitened-sums";
import { farthest, madeNoise, madeSeries } from "./made-series";
import { definition, flat } from "./sums-by-definition";

const groups = fc.array(
  fc.record({
    values: fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 1, maxLength: 4 }),
    sd: fc.double({ min: 0, max: 3, noNaN: true }),
    label: fc.constantFrom("a", "b", null),
  }),
  { minLength: 4, maxLength: 12 },
);
const cells = fc.record({
  daySd: fc.double({ min: 0.1, max: 6, noNaN: true }),
  correlation: fc.double({ min: 0, max: 0.9, noNaN: true }),
  fadesBy: fc.constantFrom("days" as const, undefined),
});

describe("reference: filter, factor and definition agree to 1e-10", () => {
  it("independent errors: the filter, the factor, the definition", () => {
    fc.assert(
      fc.property(groups, cells, (list, cell) => {
        const series = madeSeries(list.map((group) => group.values));
        const look = lookData(
          { ...series, groups: series.groups.map((group, i) => ({ ...group, sharedErrorSd: list[i]?.sd ?? 0 })) },
          madeNoise([cell], 3),
        );
        const nuisance = look.cells[0] as NuisanceCell;
        const filtered = emptyCellSums(look.count);
        const whitened = emptyCellSums(look.count);
        filteredSums(look, nuisance, filtered);
        whitenedSums(look, nuisance, whitened);
        expect(look.ties).toBeNull();
        expect(farthest(flat(filtered), definition(look, nuisance))).toBeLessThan(1e-10);
        expect(farthest(flat(whitened), definition(look, nuisance))).toBeLessThan(1e-10);
      }),
    );
  });
  it("a starting belief adds 1 / sd^2, mean / sd^2, mean^2 / sd^2 and log sd^2 on both paths", () => {
    const series = madeSeries([[1], [2], [4], [3], [5]]);
    const noise = madeNoise([{ daySd: 1, correlation: 0.3 }], 3);
    const plain = emptyCellSums(5);
    const look = lookData(series, noise);
    filteredSums(look, look.cells[0] as NuisanceCell, plain);
    for (const fill of [filteredSums, whitenedSums]) {
      const believed = lookData({ ...series, start: { mean: 4, sd: 2 } }, noise);
      const sums = emptyCellSums(5);
      fill(believed, believed.cells[0] as NuisanceCell, sums);
      expect(sums.oneOne - plain.oneOne).toBeCloseTo(1 / 4, 10);
      expect(sums.oneY - plain.oneY).toBeCloseTo(3 / 4, 10);
      expect(sums.yy - plain.yy).toBeCloseTo(9 / 4, 10);
      expect(sums.logDeterminant - plain.logDeterminant).toBeCloseTo(Math.log(4), 10);
    }
  });
});
