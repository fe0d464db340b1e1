import { describe, expect, it } from "vitest";
import { betaBinomial } from "@/lib/stats/beta-binomial";
import type { GroupCounts } from "@/lib/stats/group-counts";
import { shareGrid } from "@/lib/stats/share-grid";
import { shareSums } from "@/lib/stats/share-sums";
import { answerOf, expectNear } from "@/tests/reference/read-reference";
import { drawnGroup } from "./made-groups";
import { monteCarloBand, seededChances } from "./seeded-normals";

const groups: readonly GroupCounts[] = [
  { successes: 2, trials: 5 },
  { successes: 4, trials: 9 },
  { successes: 0, trials: 1 },
  { successes: 7, trials: 8 },
];
const belief = { correlations: [0, 0.2], weights: [0.5, 0.5] };
const grid = shareGrid(groups, belief);

describe("reference: Euler's beta integral", () => {
  it("2 of 5 and 4 of 9, no correlation: the mean share is (6 + 1) / (14 + 2), to 4 digits", () => {
    const { shares } = shareSums(grid, 0).stretch(0, 2);
    const mean = shares.reduce((sum, weight, j) => sum + weight * (grid.shares[j] as number), 0);
    expectNear(mean, 7 / 16, { rel: 1e-4 });
  });
});

describe("too little and bad input", () => {
  it("no group leaves each share equally believed, with log chance 0", () => {
    const { log, shares } = shareSums(grid, 1).stretch(3, 3);
    expectNear(log, 0, { abs: 1e-12 });
    shares.forEach((share, j) => {
      expectNear(share, grid.masses[j] as number, { rel: 1e-10 });
    });
  });

  it("a stretch beyond the groups, one backwards and a third correlation are refused", () => {
    expect(() => shareSums(grid, 0).stretch(0, 5)).toThrow("there are 4 groups, no stretch 0 to 5");
    expect(() => shareSums(grid, 0).stretch(2, 1)).toThrow("no stretch 2 to 1");
    expect(() => shareSums(grid, 2)).toThrow("no correlation 2");
  });
});

describe("invariance", () => {
  it("a stretch says what its groups alone say, in any order", () => {
    for (const correlation of [0, 1]) {
      const alone = shareGrid([groups[2] as GroupCounts, groups[1] as GroupCounts], belief);
      const part = shareSums(grid, correlation).stretch(1, 3);
      const whole = shareSums(alone, correlation).stretch(0, 2);
      expectNear(part.log, whole.log, { abs: 1e-11 });
      part.shares.forEach((share, j) => {
        expectNear(share, whole.shares[j] as number, { rel: 1e-9, abs: 1e-18 });
      });
    }
  });

  it("log chances of all groups, mixed over correlations, are the evidence of betaBinomial", () => {
    const [first, second] = [0, 1].map((r) => shareSums(grid, r).stretch(0, 4).log) as [number, number];
    const mixed = Math.log((Math.exp(first) + Math.exp(second)) / 2);
    expectNear(mixed, answerOf(betaBinomial(groups, belief)).logEvidence, { abs: 1e-10 });
  });
});

describe("calibration", () => {
  it("the correlation known, in 400 drawn sets of 3 groups the upper half of the belief holds the share in .5 within 4 standard errors (.1)", () => {
    const chance = seededChances(227);
    const runs = 400;
    let above = 0;
    for (let run = 0; run < runs; run++) {
      const share = chance();
      const drawn = Array.from({ length: 3 }, () => drawnGroup(6, share, 0.2, chance));
      const made = shareGrid(drawn, belief);
      const { shares } = shareSums(made, 1).stretch(0, 3);
      const below = shares.reduce((sum, weight, j) => sum + ((made.shares[j] as number) < share ? weight : 0), 0);
      if (below < 0.5) above++;
    }
    expectNear(above / runs, 0.5, { abs: monteCarloBand(0.5, runs) });
  });
});
