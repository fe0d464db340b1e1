import { beforeAll, describe, expect, it } from "vitest";
import type { NoiseModel } from "@/lib/stats/noise-model";
import { learnAcademy } from "./population";
import { type ScenarioScore, scoreScenario } from "./scenario-score";
import { CHANGED, PROMISED } from "./scenarios";

const SEED = 41;
const FLAT_EACH = 16;
const STEPS = 60;

/** A count that a binomial of n and p exceeds in one of a hundred, by the normal curve. */
function highest(n: number, p: number): number {
  return Math.floor(n * p + 2.33 * Math.sqrt(n * p * (1 - p)) + 0.5);
}

/** A count below which a binomial of n and p falls in one of a hundred. */
function lowest(n: number, p: number): number {
  return Math.ceil(n * p - 2.33 * Math.sqrt(n * p * (1 - p)) - 0.5);
}

describe("calibration, short form", () => {
  let academies: readonly NoiseModel[];
  let flat: readonly ScenarioScore[];

  beforeAll(() => {
    academies = [learnAcademy(40, SEED), learnAcademy(40, SEED + 1)];
    flat = PROMISED.map((scenario, i) => scoreScenario(scenario, academies, FLAT_EACH, SEED + 100 * (i + 1)));
  }, 600_000);

  const count = (of: (score: ScenarioScore) => number): number =>
    flat.reduce((sum, score) => sum + Math.round(of(score) * score.series), 0);
  const series = PROMISED.length * FLAT_EACH;

  it("learns noise from forty students", () => {
    expect(academies.map((model) => [model.kind, model.learnedFrom])).toEqual([
      ["learned", 40],
      ["learned", 40],
    ]);
  });

  it(`of ${series} unchanged seasons at most ${highest(series, 0.05)} are ever called changed: 5 % and its Monte-Carlo band`, () => {
    expect(count((score) => score.falseWord)).toBeLessThanOrEqual(highest(series, 0.05));
  });

  it(`the level now lies in its 95 of 100 interval in at least ${lowest(series, 0.94)} of ${series}: 94 % less the band`, () => {
    expect(count((score) => score.level.in95)).toBeGreaterThanOrEqual(lowest(series, 0.94));
  });

  it(`a step of 3 U before session 11 of 20 is found in at least ${lowest(STEPS, 0.95)} of ${STEPS}: 95 % less the band, and early or wrong in at most ${highest(STEPS, 0.03)}`, () => {
    const scenario = CHANGED.find((each) => each.name === "step 3 U");
    if (scenario === undefined) throw new Error("no such scenario");
    const step = scoreScenario(scenario, academies, STEPS, SEED);
    expect(Math.round(step.found * STEPS)).toBeGreaterThanOrEqual(lowest(STEPS, 0.95));
    expect(Math.round(step.falseWord * STEPS)).toBeLessThanOrEqual(highest(STEPS, 0.03));
    expect(Math.round(step.level.in95 * STEPS)).toBeGreaterThanOrEqual(lowest(STEPS, 0.94));
    expect(step.set95 * step.steps).toBeGreaterThanOrEqual(lowest(step.steps, 0.95));
  });
});
