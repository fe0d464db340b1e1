import { beforeAll, describe, expect, it } from "vitest";
import { ACADEMIES } from "./drills-population";
import { type DrillsScore, scoreDrills } from "./drills-score";

const RUNS = 25;
const SEED = 5501;

describe(`the comparison of drills, short form: ${RUNS} academies of a kind`, () => {
  let useless: DrillsScore;
  let two: DrillsScore;
  let hidden: DrillsScore;

  beforeAll(() => {
    const score = (name: string) => {
      const academy = ACADEMIES.find((one) => one.name === name);
      if (academy === undefined) throw new RangeError(`no academy of that name: ${name}`);
      return scoreDrills(academy, RUNS, SEED);
    };
    useless = score("eight useless drills");
    two = score("two of eight worth .8 U");
    hidden = score("useless, quick learners get one drill");
  }, 120_000);

  it("intervals hold the truth in .94 to .98 less a band for academies whose drills share a reference", () => {
    // Intervals of one academy go together: as if there were three independent ones in each.
    const band = 3 * Math.sqrt((0.95 * 0.05) / (3 * RUNS));
    for (const score of [useless, two]) {
      expect(score.effects).toBeGreaterThan(6 * RUNS);
      expect(score.coverage).toBeGreaterThan(0.94 - band);
      expect(Math.abs(score.bias)).toBeLessThan(0.03 + 3 * (0.2 / Math.sqrt(RUNS)));
    }
  });
  it("a useless drill is said to work in at most .03 of academies: of 25 in at most 3 (more: one in 130)", () => {
    expect(useless.falseWorks * RUNS).toBeLessThanOrEqual(3);
    expect(two.falseWorks * RUNS).toBeLessThanOrEqual(3);
  });
  it("a drill worth .8 U with 20 students or more is found in at least .95, less a band", () => {
    const [, many] = two.found;
    expect(many?.of).toBeGreaterThan(20);
    expect(many?.share).toBeGreaterThan(0.95 - 2.33 * Math.sqrt((0.95 * 0.05) / (many?.of ?? 1)));
  });
  it("a hidden reason shifts what no column holds: the page says so, and here it shows", () => {
    expect(hidden.coverage).toBeLessThan(useless.coverage);
  });
});
