import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leaveOneOut } from "@/lib/stats/leave-one-out";
import type { MetaChoices } from "@/lib/stats/random-effects-meta";
import { answerOf, expectAllNear, expectNear } from "@/tests/reference/read-reference";
import { drawnStudies, METAFOR } from "./made-studies";
import { monteCarloBand, seededNormals } from "./seeded-normals";

const choices: MetaChoices = { estimator: "restricted-likelihood", interval: "normal", confidence: 0.95 };

describe("reference: R metafor 3.8.1, leave1out, on the BCG trials (Colditz et al. 1994)", () => {
  it("13 trials by restricted likelihood, each left out: mean, interval, variance and I2 within 1e-5", () => {
    const one = METAFOR.find((set) => set.more && set.estimator === "restricted-likelihood");
    if (!one?.more) throw new Error("no case");
    const rest = answerOf(leaveOneOut(one.effects, one.variances, choices));
    const { tolerance, more } = one;
    expectAllNear(
      rest.map((meta) => meta.estimate),
      more.loo_est,
      tolerance,
      "estimate",
    );
    expectAllNear(
      rest.map((meta) => meta.low),
      more.loo_ci_lb,
      tolerance,
      "low",
    );
    expectAllNear(
      rest.map((meta) => meta.high),
      more.loo_ci_ub,
      tolerance,
      "high",
    );
    expectAllNear(
      rest.map((meta) => meta.betweenVariance),
      more.loo_tau2,
      tolerance,
      "variance",
    );
    expectAllNear(
      rest.map((meta) => 100 * meta.betweenShare),
      more.loo_I2,
      tolerance,
      "I2",
    );
  });
});

describe("too little and bad input", () => {
  it("one and two studies are too few of 3", () => {
    expect(leaveOneOut([1], [1], choices)).toEqual({ kind: "too-few", have: 1, need: 3 });
    expect(leaveOneOut([1, 2], [1, 1], choices)).toEqual({ kind: "too-few", have: 2, need: 3 });
  });

  it("a variance of 0 is refused", () => {
    expect(() => leaveOneOut([1, 2, 3], [1, 1, 0], choices)).toThrow("variances[2] must be above 0");
  });
});

describe("invariance", () => {
  it("reversing the studies reverses the analyses; a study equal to the mean of all, left out, leaves the common mean of equal variances", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 3, maxLength: 8 }), (effects) => {
        const variances = effects.map((_, i) => 1 + i);
        const there = answerOf(leaveOneOut(effects, variances, choices));
        const back = answerOf(leaveOneOut([...effects].reverse(), [...variances].reverse(), choices));
        expectAllNear(
          back.map((meta) => meta.estimate),
          there.map((meta) => meta.estimate).reverse(),
          { rel: 1e-7, abs: 1e-7 },
        );
        const mean = effects.reduce((sum, effect) => sum + effect, 0) / effects.length;
        const even = answerOf(
          leaveOneOut(
            [...effects, mean],
            [...effects, mean].map(() => 1),
            choices,
          ),
        );
        expectNear(even[effects.length]?.estimate ?? Number.NaN, mean, { abs: 1e-9 });
      }),
      { numRuns: 25 },
    );
  });
});

describe("calibration", () => {
  it("9 studies, between sd 1, errors of variance 0.5: without the largest effect the mean comes out low; without the first the 95 of 100 holds it in .95 of 500 sets within .039", () => {
    const normal = seededNormals(61);
    const variances = new Array<number>(9).fill(0.5);
    const runs = 500;
    const byMoments: MetaChoices = { estimator: "moments", interval: "hartung-knapp", confidence: 0.95 };
    let held = 0;
    let withoutLargest = 0;
    for (let run = 0; run < runs; run++) {
      const effects = drawnStudies(2, 1, variances, normal);
      const rest = answerOf(leaveOneOut(effects, variances, byMoments));
      const first = rest[0] as (typeof rest)[number];
      if (first.low <= 2 && 2 <= first.high) held++;
      withoutLargest += (rest[effects.indexOf(Math.max(...effects))] as (typeof rest)[number]).estimate / runs;
    }
    expectNear(held / runs, 0.95, { abs: monteCarloBand(0.95, runs) }, "held");
    // The largest of 9 standard normal numbers is 1.48501 on average, and the others' mean lower by an eighth of it (Harter 1961).
    const error = Math.sqrt(1.5 / 8 / runs);
    expectNear(withoutLargest, 2 - (1.48501 * Math.sqrt(1.5)) / 8, { abs: 4 * error }, "without the largest");
  });
});
