import { describe, expect, it } from "vitest";
import type { GroupCounts } from "@/lib/stats/group-counts";
import { logGamma } from "@/lib/stats/log-gamma";
import { shareGrid } from "@/lib/stats/share-grid";
import type { ShareSide } from "@/lib/stats/share-side";
import { shareSums } from "@/lib/stats/share-sums";
import { LEAST_SIDE, stepPlaces } from "@/lib/stats/step-places";
import { expectNear } from "@/tests/reference/read-reference";
import { drawnGroup } from "./made-groups";
import { monteCarloBand, seededChances } from "./seeded-normals";

const BINOMIAL = { correlations: [0], weights: [1] };
const ofFive = (counts: readonly number[]): GroupCounts[] => counts.map((successes) => ({ successes, trials: 5 }));

function placesOf(groups: readonly GroupCounts[], belief: typeof BINOMIAL, count = groups.length) {
  const grid = shareGrid(groups, belief);
  return stepPlaces(
    belief.correlations.map((_, r) => shareSums(grid, r)),
    belief,
    count,
  );
}

describe("reference: Euler's beta integral", () => {
  it("0, 1, 4, 5 of five, no correlation: B(2, 10) B(10, 2) / B(11, 11), the one place that leaves two groups each", () => {
    const logBeta = (a: number, b: number) => logGamma(a) + logGamma(b) - logGamma(a + b);
    const { logBayesFactor, steps } = placesOf(ofFive([0, 1, 4, 5]), BINOMIAL);
    expectNear(logBayesFactor, 2 * logBeta(2, 10) - logBeta(11, 11), { abs: 2e-4 });
    expect(steps.map((step) => step.place)).toEqual([LEAST_SIDE]);
  });
});

describe("too little and bad input", () => {
  it("three groups are refused", () => {
    expect(() => placesOf(ofFive([1, 2, 3]), BINOMIAL)).toThrow("a step needs 4 groups, got 3");
  });
});

describe("invariance", () => {
  const groups = ofFive([1, 0, 2, 3, 5, 4, 4]);
  const belief = { correlations: [0, 0.3], weights: [0.4, 0.6] };

  it("the first five of seven groups say what five alone say, with sides kept between calls or not", () => {
    const alone = placesOf(groups.slice(0, 5), belief);
    expectNear(placesOf(groups, belief, 5).logBayesFactor, alone.logBayesFactor, { abs: 1e-11 });
    const grid = shareGrid(groups, belief);
    const sums = [shareSums(grid, 0), shareSums(grid, 1)];
    const kept = new Map<string, ShareSide>();
    stepPlaces(sums, belief, 5, kept);
    expect(stepPlaces(sums, belief, 7, kept).logBayesFactor).toBe(stepPlaces(sums, belief, 7).logBayesFactor);
  });

  it("a correlation that nobody believes in adds no answer", () => {
    const { steps, wholes } = placesOf(groups, { correlations: [0, 0.3], weights: [1, 0] });
    expect([wholes.length, steps.length]).toEqual([1, 4]);
    expectNear(
      placesOf(groups, BINOMIAL).logBayesFactor,
      placesOf(groups, { correlations: [0, 0.3], weights: [1, 0] }).logBayesFactor,
      { abs: 1e-12 },
    );
  });
});

describe("calibration", () => {
  it("200 sets of six groups without a step: a Bayes factor above 5 in less than 1 of 5, by Markov, and 4 standard errors (.1131)", () => {
    const chance = seededChances(229);
    const runs = 200;
    let alarms = 0;
    for (let run = 0; run < runs; run++) {
      const share = chance();
      const groups = Array.from({ length: 6 }, () => drawnGroup(5, share, 0, chance));
      if (placesOf(groups, BINOMIAL).logBayesFactor > Math.log(5)) alarms++;
    }
    expect(alarms / runs).toBeLessThanOrEqual(0.2 + monteCarloBand(0.2, runs));
  });
});
