import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { emptyCellSums } from "@/lib/stats/cell-sums";
import { filteredSums } from "@/lib/stats/innovation-filter";
import { lookData } from "@/lib/stats/look-data";
import type { NuisanceCell } from "@/lib/stats/nuisance-grid";
import { persistentSums } from "@/lib/stats/persistence-filter";
import { farthest, madeNoise, madeSeries } from "./made-series";
import { definition, flat } from "./sums-by-definition";

const groups = fc.array(
  fc.record({
    values: fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 1, maxLength: 4 }),
    sd: fc.double({ min: 0, max: 3, noNaN: true }),
    gap: fc.integer({ min: 0, max: 40 }),
    label: fc.constantFrom("own", null),
  }),
  { minLength: 4, maxLength: 12 },
);
const cells = fc.record({
  daySd: fc.double({ min: 0.1, max: 6, noNaN: true }),
  correlation: fc.double({ min: 0, max: 0.9, noNaN: true }),
  fadesBy: fc.constantFrom("days" as const, undefined),
  errorPersistence: fc.double({ min: 0, max: 0.95, noNaN: true }),
});
type Listed = { readonly values: number[]; readonly sd: number; readonly gap: number; readonly label: "own" | null };

/** Groups that name a label name one of their own: a draw for each. */
function seriesOf(list: readonly Listed[]) {
  const series = madeSeries(list.map((group) => group.values));
  let day = 0;
  return {
    ...series,
    groups: series.groups.map((group, i) => {
      const { sd, gap, label } = list[i] as Listed;
      day += gap;
      return { ...group, day, sharedErrorSd: sd, sharedErrorLabel: label === null ? null : `own ${i}` };
    }),
  };
}

describe("reference: the filter of two states agrees with the definition to 1e-9", () => {
  it("any groups, gaps, labels of their own, correlations by groups or days, and persistence; local spread too", () => {
    fc.assert(
      fc.property(groups, cells, fc.constantFrom("local" as const, undefined), (list, cell, spread) => {
        const look = lookData(seriesOf(list), { ...madeNoise([cell], 3), ...(spread ? { spread } : {}) });
        expect(look.ties).toBeNull();
        const nuisance = look.cells[0] as NuisanceCell;
        const filtered = emptyCellSums(look.count);
        persistentSums(look, nuisance, filtered);
        expect(farthest(flat(filtered), definition(look, nuisance))).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
  });
});

describe("too little and bad input", () => {
  it("two groups are enough for sums; bad numbers are refused before", () => {
    const look = lookData(madeSeries([[1], [2]]), madeNoise([{ errorPersistence: 0.8 }], 3));
    const sums = emptyCellSums(2);
    persistentSums(look, look.cells[0] as NuisanceCell, sums);
    expect(farthest(flat(sums), definition(look, look.cells[0] as NuisanceCell))).toBeLessThan(1e-12);
    expect(() => lookData(madeSeries([[1], [2]]), madeNoise([{ errorPersistence: 1 }], 3))).toThrow("persistence");
  });
});

describe("invariance", () => {
  it("without persistence it is the filter of one state", () => {
    fc.assert(
      fc.property(groups, cells, (list, cell) => {
        const look = lookData(seriesOf(list), madeNoise([{ ...cell, errorPersistence: 0 }], 3));
        const [one, two] = [emptyCellSums(look.count), emptyCellSums(look.count)];
        filteredSums(look, look.cells[0] as NuisanceCell, one);
        persistentSums(look, look.cells[0] as NuisanceCell, two);
        expect(farthest(flat(one), flat(two))).toBeLessThan(1e-10);
      }),
    );
  });
  it("a starting belief adds what it adds to the filter of one state", () => {
    const series = { ...madeSeries([[1], [2], [4], [3], [5]]), start: { mean: 2, sd: 0.5 } };
    const look = lookData(series, madeNoise([{ errorPersistence: 0 }], 3));
    const [one, two] = [emptyCellSums(5), emptyCellSums(5)];
    filteredSums(look, look.cells[0] as NuisanceCell, one);
    persistentSums(look, look.cells[0] as NuisanceCell, two);
    expect(farthest(flat(one), flat(two))).toBeLessThan(1e-12);
  });
});
