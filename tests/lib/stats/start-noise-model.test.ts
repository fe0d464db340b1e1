import { describe, expect, it } from "vitest";
import { requireNoiseModel } from "@/lib/stats/require-series";
import { startNoiseModel } from "@/lib/stats/start-noise-model";

describe("reference", () => {
  it("nine day sds by four correlations, alike; above 0 they fade by groups or days, and three tenths of each persist", () => {
    const model = startNoiseModel("first");
    requireNoiseModel(model);
    expect(model.id).toBe("first");
    expect([model.kind, model.spread]).toEqual(["start", "local"]);
    expect(model.cells).toHaveLength(9 * (1 + 3 * 2) * 2);
    const weight = (of: (cell: (typeof model.cells)[number]) => boolean): number =>
      model.cells.filter(of).reduce((sum, cell) => sum + cell.weight, 0);
    expect(weight((cell) => cell.daySd === 0.5)).toBeCloseTo(1 / 9, 12);
    expect(weight((cell) => cell.correlation === 0.3)).toBeCloseTo(1 / 4, 12);
    expect(weight((cell) => cell.fadesBy === "days")).toBeCloseTo(3 / 8, 12);
    expect(weight((cell) => cell.errorPersistence === 0.8)).toBeCloseTo(0.3, 12);
    expect(new Set(model.cells.map((cell) => cell.daySd))).toEqual(
      new Set([0.1, 0.3, 0.5, 0.7, 0.9, 1.15, 1.5, 2, 2.7]),
    );
    expect(new Set(model.cells.map((cell) => cell.correlation))).toEqual(new Set([0, 0.15, 0.3, 0.45]));
    expect([model.replicateSd, model.priorChange, model.learnedFrom]).toEqual([null, 0.2, 0]);
  });
});
