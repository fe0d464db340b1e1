import { describe, expect, it } from "vitest";
import { nuisanceGrid } from "@/lib/stats/nuisance-grid";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { madeNoise } from "./made-series";

describe("reference", () => {
  it("a learned model keeps its unit, cells of weight 0 drop out", () => {
    const grid = nuisanceGrid(madeNoise([{ daySd: 2, weight: 1 }, { weight: 0 }]), [0, 9], 1, 1);
    expect(grid).toEqual([
      { daySd: 2, correlation: 0, fadesBy: "groups", errorPersistence: 0, weight: 1, logWeight: 0 },
    ]);
  });
  it("a start model is counted in the series' own scale: steps 1 2 3, median 2 / 0.9539", () => {
    const grid = nuisanceGrid(startNoiseModel("s"), [0, 1, 3, 6], 0, 1);
    expect(grid).toHaveLength(126);
    expect(grid[0]?.daySd).toBeCloseTo((0.1 * 2) / 0.9539, 12);
    expect(grid.at(-1)?.daySd).toBeCloseTo((2.7 * 2) / 0.9539, 12);
    expect(grid.at(-1)?.correlation).toBe(0.45);
  });
});

describe("too little and bad input", () => {
  it("a start model needs two values", () => {
    expect(() => nuisanceGrid(startNoiseModel("s"), [1], 1, 1)).toThrow("1");
  });
});

describe("invariance", () => {
  it("constant values still give day sds above 0", () => {
    for (const cell of nuisanceGrid(startNoiseModel("s"), [3, 3, 3], 0, 0.2)) expect(cell.daySd).toBeGreaterThan(0);
  });
});
