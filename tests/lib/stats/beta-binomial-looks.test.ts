import { describe, expect, it } from "vitest";
import { betaBinomialLooks } from "@/lib/stats/beta-binomial-looks";
import { betaBinomialStep } from "@/lib/stats/beta-binomial-step";
import type { GroupCounts } from "@/lib/stats/group-counts";
import { answerOf, expectNear, readReference, type Tolerance } from "@/tests/reference/read-reference";
import { drawnGroup, groupsOf } from "./made-groups";
import { monteCarloBand, seededChances } from "./seeded-normals";

type Input = Parameters<typeof groupsOf>[0];
interface Expected {
  readonly log_bayes_factor: number;
  readonly higher_after: number;
}

describe("reference: exact rational arithmetic on polynomials", () => {
  it.each(readReference<Input, Expected>("06c_beta_binomial", "bb_step"))(
    "$id: the last look has its Bayes factor and direction",
    ({ input, expected, tolerance }) => {
      const { groups, belief } = groupsOf(input);
      const look = betaBinomialLooks(groups, belief).at(-1);
      if (look === undefined) throw new Error("no look");
      const last = answerOf(look);
      expectNear(last.logBayesFactor, expected.log_bayes_factor, { abs: tolerance.log_abs } as Tolerance);
      expectNear(last.upChance, expected.higher_after, tolerance);
    },
  );
});

describe("too little and bad input", () => {
  it("the first three looks are too few of 4; no group has no look", () => {
    const looks = betaBinomialLooks([1, 2, 3, 4].map((successes) => ({ successes, trials: 5 })));
    expect(looks.slice(0, 3)).toEqual([1, 2, 3].map((have) => ({ kind: "too-few", have, need: 4 })));
    expect(looks[3]?.kind).toBe("ok");
    expect(betaBinomialLooks([])).toEqual([]);
  });

  it("a group of no trial is refused", () => {
    expect(() => betaBinomialLooks([{ successes: 0, trials: 0 }])).toThrow("groups[0] must hold");
  });
});

describe("invariance", () => {
  it("each look says what the step says of its own groups alone: nothing later is seen", () => {
    const chance = seededChances(233);
    const groups: GroupCounts[] = Array.from({ length: 12 }, (_, i) =>
      drawnGroup(5 + Math.floor(26 * chance()), i < 6 ? 0.4 : 0.7, 0.1, chance),
    );
    betaBinomialLooks(groups).forEach((look, at) => {
      const alone = betaBinomialStep(groups.slice(0, at + 1), 0.5);
      if (look.kind === "too-few") {
        expect(alone).toEqual(look);
        return;
      }
      expectNear(look.value.logBayesFactor, answerOf(alone).logBayesFactor, { abs: 1e-9 });
      expectNear(look.value.upChance, answerOf(alone).upChance, { abs: 1e-9 });
    });
  });
});

describe("calibration", () => {
  it("100 unchanged sets of ten: at its last look a Bayes factor above 4 in less than 1 of 4, by Markov, and 4 standard errors (.1732)", () => {
    const chance = seededChances(239);
    const belief = { correlations: [0, 0.2], weights: [0.5, 0.5] };
    const runs = 100;
    let alarms = 0;
    for (let run = 0; run < runs; run++) {
      const [share, rho] = [chance(), chance() < 0.5 ? 0 : 0.2];
      const groups = Array.from({ length: 10 }, () => drawnGroup(6, share, rho, chance));
      const look = betaBinomialLooks(groups, belief).at(-1);
      if (look?.kind === "ok" && look.value.logBayesFactor > Math.log(4)) alarms++;
    }
    expect(alarms / runs).toBeLessThanOrEqual(0.25 + monteCarloBand(0.25, runs));
  });
});
