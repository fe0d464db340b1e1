import { describe, expect, it } from "vitest";
import { NOISE_GRID, type NoiseGrid, priorCells } from "@/lib/stats/noise-grid";

const small: NoiseGrid = {
  multiples: [1, 2],
  correlations: [0, 0.3],
  fades: ["groups", "days"],
  persistences: [
    { value: 0, share: 0.75 },
    { value: 0.8, share: 0.25 },
  ],
  spread: "local",
};

describe("reference", () => {
  it("worked by hand: correlation 0 has one form, .3 two; of a quarter each form has an eighth, a fourth of which persists", () => {
    expect(priorCells(small).slice(0, 6)).toEqual([
      { daySd: 1, correlation: 0, weight: 3 / 16 },
      { daySd: 1, correlation: 0, errorPersistence: 0.8, weight: 1 / 16 },
      { daySd: 1, correlation: 0.3, weight: 3 / 32 },
      { daySd: 1, correlation: 0.3, errorPersistence: 0.8, weight: 1 / 32 },
      { daySd: 1, correlation: 0.3, fadesBy: "days", weight: 3 / 32 },
      { daySd: 1, correlation: 0.3, fadesBy: "days", errorPersistence: 0.8, weight: 1 / 32 },
    ]);
  });
});

describe("invariance", () => {
  it.each([small, NOISE_GRID])("shares sum to 1", (grid) => {
    expect(priorCells(grid).reduce((sum, cell) => sum + cell.weight, 0)).toBeCloseTo(1, 12);
  });
});

describe("too little and bad input", () => {
  it("no multiple, no cell", () => expect(priorCells({ ...small, multiples: [] })).toEqual([]));
});
