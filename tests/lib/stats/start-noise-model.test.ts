import { describe, expect, it } from "vitest";
import { requireNoiseModel } from "@/lib/stats/require-series";
import { startNoiseModel } from "@/lib/stats/start-noise-model";

describe("reference", () => {
  it("nine day sds by four correlations, weights 1/36, nothing learned", () => {
    const model = startNoiseModel("first");
    requireNoiseModel(model);
    expect(model.id).toBe("first");
    expect(model.kind).toBe("start");
    expect(model.cells).toHaveLength(36);
    expect(model.cells.every((cell) => cell.weight === 1 / 36)).toBe(true);
    expect(new Set(model.cells.map((cell) => cell.daySd))).toEqual(
      new Set([0.1, 0.3, 0.5, 0.7, 0.9, 1.15, 1.5, 2, 2.7]),
    );
    expect(new Set(model.cells.map((cell) => cell.correlation))).toEqual(new Set([0, 0.15, 0.3, 0.45]));
    expect([model.replicateSd, model.priorChange, model.learnedFrom]).toEqual([null, 0.2, 0]);
  });
});
