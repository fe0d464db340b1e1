import { describe, expect, it } from "vitest";
import { evidence } from "@/lib/stats/evidence";
import { fitNoiseModel } from "@/lib/stats/fit-noise-model";
import { NOISE_GRID, priorCells } from "@/lib/stats/noise-grid";
import { requireNoiseModel } from "@/lib/stats/require-series";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { answerOf } from "@/tests/reference/read-reference";
import { type Made, madeSeries, normal, seeded, simulatedSeries, transformed } from "./made-series";

const pool = (count: number, made: Made, seed: number) => {
  const random = seeded(seed);
  return Array.from({ length: count }, () => simulatedSeries(made, random));
};
/** The grid's own split of belief, in the order of a model's cells. */
const SPLIT = priorCells(NOISE_GRID).map((cell) => cell.weight);
/** Mean day sd of what was learned: the half put back to the split taken out again. */
const learnedDaySd = (model: ReturnType<typeof fitNoiseModel>): number =>
  2 * model.cells.reduce((sum, cell, g) => sum + (cell.weight - 0.5 * (SPLIT[g] as number)) * cell.daySd, 0);

describe("reference: a known truth", () => {
  it.each([0.6, 1.5, 3])("40 series of 20 groups, day sd %d: learned mean within 45 %", (daySd) => {
    const model = fitNoiseModel(pool(40, { groups: 20, daySd }, 51), "m");
    expect(Math.abs(learnedDaySd(model) / daySd - 1)).toBeLessThan(0.45);
    expect(Math.abs((model.replicateSd as number) / 3 - 1)).toBeLessThan(0.05);
  });
  it("correlation 0.4 gets a higher mean correlation than 0", () => {
    const mean = (correlation: number): number =>
      fitNoiseModel(pool(40, { groups: 20, daySd: 3, correlation }, 52), "m").cells.reduce(
        (sum, cell) => sum + cell.weight * cell.correlation,
        0,
      );
    expect(mean(0.4)).toBeGreaterThan(mean(0) + 0.05);
  });
  it("84 cells: six multiples of a third of the replicate sd, by correlations, fades and persistences; weights sum to 1, none below .4 of its share", () => {
    const model = fitNoiseModel(pool(12, { groups: 10 }, 53), "m");
    requireNoiseModel(model);
    expect(model.cells).toHaveLength(84);
    expect(model.cells.reduce((sum, cell) => sum + cell.weight, 0)).toBeCloseTo(1, 12);
    for (const [g, cell] of model.cells.entries()) expect(cell.weight).toBeGreaterThan(0.4 * (SPLIT[g] as number));
    expect(model.cells[0]?.daySd).toBeCloseTo((0.3 * (model.replicateSd as number)) / 3, 12);
    expect([model.kind, model.id, model.learnedFrom, model.spread]).toEqual(["learned", "m", 12, "local"]);
  });
  it("a pool whose shared errors persist is believed to persist more than the grid's three tenths, one whose errors are drawn anew just that", () => {
    const random = seeded(59);
    const persisting = Array.from({ length: 40 }, () => {
      const series = simulatedSeries({ groups: 20, daySd: 1, sharedErrorSd: 0 }, random);
      let error = 3 * normal(random);
      return {
        ...series,
        groups: series.groups.map((group, i) => {
          if (i % 6 === 0) error = 3 * normal(random);
          return { ...group, sharedErrorSd: 3, values: group.values.map((value) => value + error) };
        }),
      };
    });
    const anew = pool(40, { groups: 20, daySd: 1, sharedErrorSd: 3 }, 60);
    const belief = (of: Parameters<typeof fitNoiseModel>[0]): number =>
      fitNoiseModel(of, "m").cells.reduce((sum, cell) => sum + (cell.errorPersistence ? cell.weight : 0), 0);
    expect(belief(persisting)).toBeGreaterThan(0.5);
    expect(belief(anew)).toBeCloseTo(0.3, 12);
  });
  it("the share that changes: held at .05 to .5, larger where half the series jump by 4 U", () => {
    const random = seeded(54);
    const mixed = Array.from({ length: 40 }, (_, r) =>
      simulatedSeries({ groups: 20, level: (i) => (r % 2 === 1 && i >= 10 ? 9 : 0) }, random),
    );
    const flat = fitNoiseModel(pool(40, { groups: 20 }, 55), "m");
    const half = fitNoiseModel(mixed, "m");
    expect(flat.priorChange).toBeGreaterThanOrEqual(0.05);
    expect(half.priorChange).toBeLessThanOrEqual(0.5);
    expect(half.priorChange).toBeGreaterThan(flat.priorChange);
    expect(half.priorChange).toBeGreaterThan(0.4);
  });
});

describe("too little and bad input", () => {
  it("nine series, or ten of which one has four used groups: the start model", () => {
    const ten = pool(10, { groups: 8 }, 56);
    expect(fitNoiseModel(ten.slice(0, 9), "m")).toEqual(startNoiseModel("m"));
    const short = ten.map((one, r) =>
      r === 0 ? { ...one, groups: one.groups.map((group, i) => ({ ...group, used: i < 4 })) } : one,
    );
    expect(fitNoiseModel(short, "m")).toEqual(startNoiseModel("m"));
    expect(fitNoiseModel([], "m")).toEqual(startNoiseModel("m"));
  });
  it("single replicates: replicate sd unknown, day sds on the pool's own scale, usable at once", () => {
    const model = fitNoiseModel(pool(12, { groups: 10, replicates: 1 }, 57), "m");
    requireNoiseModel(model);
    expect([model.kind, model.replicateSd]).toEqual(["learned", null]);
    const one = pool(1, { groups: 10, replicates: 1 }, 58)[0] as ReturnType<typeof madeSeries>;
    expect(Number.isFinite(answerOf(evidence(one, model)).logBayesFactor)).toBe(true);
  });
  it("a pool without shared errors, and one of which half has them: every weight is finite, they sum to 1", () => {
    const without = pool(12, { groups: 10, sharedErrorSd: 0 }, 61);
    for (const some of [without, [...without, ...pool(12, { groups: 10 }, 62)]]) {
      const model = fitNoiseModel(some, "m");
      requireNoiseModel(model);
      expect(model.cells.every((cell) => cell.weight > 0)).toBe(true);
      expect(model.cells.reduce((sum, cell) => sum + cell.weight, 0)).toBeCloseTo(1, 12);
    }
  });
  it("a pool of constant series is finite", () => {
    const model = fitNoiseModel(new Array(10).fill(madeSeries(new Array(6).fill([2, 2, 2]))), "m");
    requireNoiseModel(model);
    expect(Number.isFinite(model.priorChange)).toBe(true);
  });
  it("a bad value in one series throws", () => {
    expect(() => fitNoiseModel([madeSeries([[Number.NaN]])], "m")).toThrow("NaN");
  });
});

describe("invariance", () => {
  it("the order of the pool changes weights by rounding only; another unit scales the day sds", () => {
    const ten = pool(10, { groups: 8 }, 59);
    const model = fitNoiseModel(ten, "m");
    const turned = fitNoiseModel([...ten].reverse(), "m");
    const scaled = fitNoiseModel(
      ten.map((one) => transformed(one, 10, 5)),
      "m",
    );
    model.cells.forEach((cell, g) => {
      expect(turned.cells[g]?.weight).toBeCloseTo(cell.weight, 10);
      expect(scaled.cells[g]?.weight).toBeCloseTo(cell.weight, 6);
      expect(scaled.cells[g]?.daySd).toBeCloseTo(10 * cell.daySd, 6);
    });
    expect(scaled.priorChange).toBeCloseTo(model.priorChange, 6);
  });
});
