import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betaBinomial } from "@/lib/stats/beta-binomial";
import { betaBinomialStep } from "@/lib/stats/beta-binomial-step";
import type { GroupCounts } from "@/lib/stats/group-counts";
import { answerOf, expectNear, readReference, type Tolerance } from "@/tests/reference/read-reference";
import { drawnGroup, groupsOf, type ReferenceSummary } from "./made-groups";
import { monteCarloBand, seededChances } from "./seeded-normals";

type Input = Parameters<typeof groupsOf>[0];
interface Expected {
  readonly log_bayes_factor: number;
  readonly places: Record<string, number>;
  readonly higher_after: number;
  readonly after: ReferenceSummary;
  readonly latest_even_odds: ReferenceSummary;
}

const ofFive = (counts: readonly number[]): GroupCounts[] => counts.map((successes) => ({ successes, trials: 5 }));

describe("reference: exact rational arithmetic on polynomials", () => {
  it.each(readReference<Input, Expected>("06c_beta_binomial", "bb_step"))(
    "$id: Bayes factor, direction, places, and the share after and latest",
    ({ input, expected, tolerance }) => {
      const { groups, belief } = groupsOf(input);
      const step = answerOf(betaBinomialStep(groups, 0.5, belief));
      const ofLogs = { abs: tolerance.log_abs } as Tolerance;
      expectNear(step.logBayesFactor, expected.log_bayes_factor, ofLogs, "Bayes factor");
      expectNear(step.chance, 1 / (1 + Math.exp(-expected.log_bayes_factor)), tolerance, "chance");
      expectNear(step.upChance, expected.higher_after, tolerance, "up");
      expect(step.direction).toBe(expected.higher_after > 0.5 ? "up" : "down");
      step.placeChances.forEach((one, place) => {
        expectNear(one, expected.places[place] ?? 0, tolerance, `place ${place}`);
      });
      for (const [got, wanted] of [
        [step.after, expected.after],
        [step.latest, expected.latest_even_odds],
      ] as const) {
        expectNear(got.mean, wanted.mean, tolerance, "mean");
        expectNear(got.equalTail80.low, wanted["equal_tail_0.8"][0], tolerance, "low, 80");
        expectNear(got.equalTail95.high, wanted["equal_tail_0.95"][1], tolerance, "high, 95");
        expectNear(got.shortest95.low, wanted["shortest_0.95"][0], tolerance, "shortest, low");
        expectNear(got.shortest80.high, wanted["shortest_0.8"][1], tolerance, "shortest, high");
      }
    },
  );

  it("0.198, 0.677, 0.114 and 0.012 at groups 2 to 5: the set of 95 of 100 is 2, 3, 4", () => {
    const [one] = readReference<Input, Expected>("06c_beta_binomial", "bb_step_up");
    if (!one) throw new Error("no case");
    const { groups, belief } = groupsOf(one.input);
    expect(answerOf(betaBinomialStep(groups, 0.5, belief)).places).toEqual([2, 3, 4]);
  });
});

describe("too little and bad input", () => {
  it("three groups are too few of 4", () => {
    expect(betaBinomialStep(ofFive([1, 2, 3]), 0.5)).toEqual({ kind: "too-few", have: 3, need: 4 });
  });

  it("four groups have one place", () => {
    expect(answerOf(betaBinomialStep(ofFive([0, 1, 4, 5]), 0.5)).places).toEqual([2]);
  });

  it("a chance of 1 and a group of no trial are refused", () => {
    expect(() => betaBinomialStep(ofFive([1, 2, 3, 4]), 1)).toThrow("stepChance must lie between 0 and 1, got 1");
    expect(() => betaBinomialStep([{ successes: 0, trials: 0 }], 0.5)).toThrow("groups[0] must hold");
  });
});

describe("invariance", () => {
  const lists = fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 4, maxLength: 9 });

  it("failures for successes turn the direction; time backwards keeps the Bayes factor; odds multiply by it", () => {
    fc.assert(
      fc.property(lists, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (counts, stepChance) => {
        const one = answerOf(betaBinomialStep(ofFive(counts), stepChance));
        const mirrored = answerOf(betaBinomialStep(ofFive(counts.map((k) => 5 - k)), stepChance));
        expectNear(mirrored.logBayesFactor, one.logBayesFactor, { abs: 1e-9 });
        expectNear(mirrored.upChance, 1 - one.upChance, { abs: 1e-9 });
        expectNear(mirrored.latest.mean, 1 - one.latest.mean, { abs: 1e-9 });
        const back = answerOf(betaBinomialStep(ofFive([...counts].reverse()), stepChance));
        expectNear(back.logBayesFactor, one.logBayesFactor, { abs: 1e-9 });
        expectNear(back.upChance, 1 - one.upChance, { abs: 1e-9 });
        expectNear(back.before.mean, one.after.mean, { abs: 1e-9 }, "before, backwards");
        expectNear(back.correlation, one.correlation, { abs: 1e-9 }, "correlation, backwards");
        const odds = Math.log(one.chance / (1 - one.chance)) - Math.log(stepChance / (1 - stepChance));
        expectNear(odds, one.logBayesFactor, { abs: 1e-9 });
        expectNear(
          one.placeChances.reduce((sum, chance) => sum + chance, 0),
          1,
          { rel: 1e-12 },
        );
      }),
      { numRuns: 20 },
    );
  });

  it("a step hardly believed leaves the constant share as the latest; one all but certain the share after it", () => {
    const groups = ofFive([1, 0, 2, 1, 4, 5, 4, 5]);
    const never = answerOf(betaBinomialStep(groups, 1e-12));
    expectNear(never.latest.mean, answerOf(betaBinomial(groups)).share.mean, { abs: 1e-7 });
    const ever = answerOf(betaBinomialStep(groups, 1 - 1e-12));
    expectNear(ever.latest.mean, ever.after.mean, { abs: 1e-9 });
    expect(ever.direction).toBe("up");
    expect(ever.places).toContain(4);
  });
});

describe("calibration", () => {
  const belief = { correlations: [0, 0.1, 0.2, 0.4], weights: [0.25, 0.25, 0.25, 0.25] };

  it("200 sets of 8 groups of 5 drawn from the belief, a step in half of them: chances add up to the steps within 4 standard errors, and 80 of 100 holds the latest share within .1131", () => {
    const chance = seededChances(97);
    const runs = 200;
    let steps = 0;
    let expected = 0;
    let variance = 0;
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const rho = belief.correlations[Math.floor(4 * chance())] as number;
      const place = chance() < 0.5 ? 2 + Math.floor(5 * chance()) : 8;
      const [before, after] = [chance(), chance()];
      const groups = Array.from({ length: 8 }, (_, i) => drawnGroup(5, i < place ? before : after, rho, chance));
      const step = answerOf(betaBinomialStep(groups, 0.5, belief));
      if (place < 8) steps++;
      expected += step.chance;
      variance += step.chance * (1 - step.chance);
      const latest = place < 8 ? after : before;
      if (step.latest.equalTail80.low <= latest && latest <= step.latest.equalTail80.high) held++;
    }
    expectNear(steps, expected, { abs: 4 * Math.sqrt(variance) }, "steps");
    expectNear(held / runs, 0.8, { abs: monteCarloBand(0.8, runs) }, "held");
  });

  it("200 sets without a step: a Bayes factor above 10 in less than 1 of 10 of them, by Markov, and 4 standard errors (.0849)", () => {
    const chance = seededChances(101);
    const runs = 200;
    let alarms = 0;
    for (let run = 0; run < runs; run++) {
      const rho = belief.correlations[Math.floor(4 * chance())] as number;
      const share = chance();
      const groups = Array.from({ length: 8 }, () => drawnGroup(5, share, rho, chance));
      if (answerOf(betaBinomialStep(groups, 0.5, belief)).logBayesFactor > Math.log(10)) alarms++;
    }
    expect(alarms / runs).toBeLessThanOrEqual(0.1 + monteCarloBand(0.1, runs));
  });
});
