import { beforeAll, describe, expect, it } from "vitest";
import { STOPPED_ACADEMIES } from "./drills-population";
import { type StaysScore, scoreStays } from "./stays-score";

const RUNS = 30;
const SEED = 5502;

describe(`what stays of drills that end, short form: ${RUNS} academies`, () => {
  let scores: readonly StaysScore[];

  beforeAll(() => {
    const [plain] = STOPPED_ACADEMIES;
    if (plain === undefined) throw new RangeError("no academy whose drills end");
    scores = scoreStays(plain, RUNS, SEED);
  }, 120_000);

  it("of .8 U nothing, half and all: intervals hold the truth in .94 to .98, less a band for drills that share a reference, and not all hold it", () => {
    // Intervals of one academy go together: as if two in each were independent.
    const band = 3 * Math.sqrt((0.95 * 0.05) / (2 * RUNS));
    expect(scores.map(({ kept }) => kept)).toEqual([0, 0.4, 0.8]);
    for (const { effects, coverage } of scores) {
      expect(effects).toBeGreaterThanOrEqual(1.8 * RUNS);
      expect(coverage).toBeGreaterThan(0.94 - band);
    }
    // At .98 some two hundred of them would all hold the truth in one of fifty runs.
    expect(scores.some(({ coverage }) => coverage < 1)).toBe(true);
  });
  it("bias within .03 U and three of its standard errors, which are those of the academies", () => {
    for (const { bias, biasError } of scores) {
      expect(biasError).toBeLessThan(0.05);
      expect(Math.abs(bias)).toBeLessThan(0.03 + 3 * biasError);
    }
  });
  it("what stays is told apart from what was there until the end: nothing from .8 U", () => {
    const [nothing, , whole] = scores;
    expect((whole?.bias ?? 0) + 0.8 - (nothing?.bias ?? 0)).toBeGreaterThan(0.5);
  });
});
