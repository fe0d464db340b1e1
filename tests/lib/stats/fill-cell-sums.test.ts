import { describe, expect, it } from "vitest";
import { type CellSums, emptyCellSums } from "@/lib/stats/cell-sums";
import { fillCellSums } from "@/lib/stats/fill-cell-sums";
import { type LookData, lookData } from "@/lib/stats/look-data";
import type { NuisanceCell } from "@/lib/stats/nuisance-grid";
import { whitenedSums } from "@/lib/stats/whitened-sums";
import { farthest, madeNoise, madeSeries } from "./made-series";

const VALUES = [
  [1, 2],
  [3, 2],
  [2, 5],
  [7, 6],
  [6, 8],
  [8, 7],
] as const;

function both(look: LookData): readonly [CellSums, CellSums] {
  const [chosen, whitened] = [emptyCellSums(look.count), emptyCellSums(look.count)];
  fillCellSums(look, look.cells[0] as NuisanceCell, chosen);
  whitenedSums(look, look.cells[0] as NuisanceCell, whitened);
  return [chosen, whitened];
}

function numbersOf({ logDeterminant, oneOne, oneY, yy, step, ramp, odd }: CellSums): number[] {
  const shapes = [step, ramp, odd].flatMap((shape) => [...shape.xx, ...shape.x1, ...shape.xy]);
  return [logDeterminant, oneOne, oneY, yy, ...shapes];
}

describe("reference: the Cholesky factor of the whole covariance", () => {
  it.each([
    ["one state", {}],
    ["a persisting error", { errorPersistence: 0.8 }],
  ])("%s", (_, cell) => {
    const look = lookData(madeSeries(VALUES), madeNoise([{ daySd: 1.2, correlation: 0.3, ...cell }], 2));
    const [chosen, whitened] = both(look);
    expect(farthest(numbersOf(chosen), numbersOf(whitened))).toBeLessThan(1e-9);
  });

  it("tied groups, whose tie is in the sums: without it they differ", () => {
    const series = madeSeries(VALUES, 2);
    const groups = series.groups.map((group, i) => ({ ...group, sharedErrorLabel: i < 3 ? "a" : "b" }));
    const tied = lookData({ ...series, groups }, madeNoise([{ daySd: 1.2 }], 2));
    const [chosen, whitened] = both(tied);
    expect(numbersOf(chosen)).toEqual(numbersOf(whitened));
    const [apart] = both(lookData(series, madeNoise([{ daySd: 1.2 }], 2)));
    expect(farthest(numbersOf(chosen), numbersOf(apart))).toBeGreaterThan(0.1);
  });
});

describe("too little and bad input", () => {
  it("two groups, the fewest with cells, give finite sums", () => {
    const [chosen] = both(lookData(madeSeries([[1], [3]]), madeNoise([{ daySd: 1 }], 2)));
    expect(numbersOf(chosen).every(Number.isFinite)).toBe(true);
  });
});

describe("invariance", () => {
  it("filled twice, the sums are the same: nothing is left over from before", () => {
    const look = lookData(madeSeries(VALUES), madeNoise([{ daySd: 1.2, correlation: 0.3 }], 2));
    const sums = emptyCellSums(look.count);
    fillCellSums(look, look.cells[0] as NuisanceCell, sums);
    const once = numbersOf(sums);
    fillCellSums(look, look.cells[0] as NuisanceCell, sums);
    expect(numbersOf(sums)).toEqual(once);
  });
});
