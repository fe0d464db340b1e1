import { describe, expect, it } from "vitest";
import { NOISE_GRID, priorCells } from "@/lib/stats/noise-grid";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { taughtNoise } from "@/lib/stats/taught-noise";
import { madeNoise, scaledNoise } from "./made-series";

const split = priorCells(NOISE_GRID);

/** A model of the grid in use: so much of the grid's own split, the rest on one cell. */
function fitted(vague: number, on: number): NoiseModel {
  return {
    ...madeNoise([]),
    cells: split.map((cell, g) => ({ ...cell, weight: vague * cell.weight + (g === on ? 1 - vague : 0) })),
    spread: "local",
  };
}

const total = (noise: NoiseModel): number => noise.cells.reduce((sum, cell) => sum + cell.weight, 0);

describe("reference: arithmetic", () => {
  const on = split.findIndex((cell) => cell.correlation === 0.15 && cell.errorPersistence === undefined);

  it("half vague, half on one cell: .5 and a tenth of the .35 that stay without persisting cells, so .5 / .535 and its part", () => {
    const taught = taughtNoise(fitted(0.5, on));
    const { daySd, correlation } = split[on] as { daySd: number; correlation: number };
    const found = taught.cells.find(
      (cell) => cell.daySd === daySd && cell.correlation === correlation && !cell.fadesBy,
    );
    expect(found?.weight).toBeCloseTo((0.5 + 0.05 * (split[on] as { weight: number }).weight) / (0.5 + 0.1 * 0.35), 10);
  });

  it("one spread for all, and no error that persists", () => {
    const taught = taughtNoise(fitted(0.5, on));
    expect(taught.spread).toBeUndefined();
    expect(taught.cells.every((cell) => (cell.errorPersistence ?? 0) === 0)).toBe(true);
    expect(taught.cells).toHaveLength(split.filter((cell) => cell.errorPersistence === undefined).length);
  });
});

describe("too little and bad input", () => {
  it("the start model taught nothing: its other cells keep their proportions", () => {
    const start = startNoiseModel("start");
    const kept = start.cells.filter((cell) => (cell.errorPersistence ?? 0) === 0);
    const taught = taughtNoise(start);
    expect(taught.cells.map((cell) => cell.weight / (taught.cells[0]?.weight ?? 1))).toEqual(
      kept.map((cell) => cell.weight / (kept[0]?.weight ?? 1)),
    );
  });

  it("a model of another grid keeps its weights, one of nothing but persisting errors its cells", () => {
    const other = madeNoise([
      { daySd: 1, weight: 0.25 },
      { daySd: 2, weight: 0.75 },
    ]);
    for (const [g, weight] of [0.25, 0.75].entries())
      expect(taughtNoise(other).cells[g]?.weight).toBeCloseTo(weight, 12);
    const persisting = madeNoise([{ errorPersistence: 0.8 }]);
    expect(taughtNoise(persisting).cells).toEqual(persisting.cells);
  });
});

describe("invariance", () => {
  it("weights sum to 1, none below 0, whatever was learned", () => {
    for (const vague of [0, 0.1, 0.5, 0.9, 1]) {
      const taught = taughtNoise(fitted(vague, 6));
      expect(total(taught)).toBeCloseTo(1, 10);
      expect(taught.cells.every((cell) => cell.weight >= 0)).toBe(true);
    }
  });

  it("in another unit it is the same in that unit", () => {
    expect(taughtNoise(scaledNoise(fitted(0.5, 6), 10))).toEqual(scaledNoise(taughtNoise(fitted(0.5, 6)), 10));
  });
});

describe("calibration", () => {
  it("what was learned weighs more: on its cell .5 of the belief becomes more than .9", () => {
    const taught = taughtNoise(fitted(0.5, 6));
    expect(Math.max(...taught.cells.map((cell) => cell.weight))).toBeGreaterThan(0.9);
  });
});
