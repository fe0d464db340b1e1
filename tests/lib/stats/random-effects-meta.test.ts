import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type MetaChoices, randomEffectsMeta } from "@/lib/stats/random-effects-meta";
import { answerOf, expectAllNear, expectNear } from "@/tests/reference/read-reference";
import { drawnStudies, METAFOR } from "./made-studies";
import { monteCarloBand, seededNormals } from "./seeded-normals";

const choices: MetaChoices = { estimator: "restricted-likelihood", interval: "normal", confidence: 0.95 };

describe("reference: R metafor 3.8.1, rma, on the BCG trials (Colditz et al. 1994) and two small sets", () => {
  it.each(METAFOR)("$id by $estimator: mean, both intervals, Q and I2 within 1e-5", (one) => {
    const { effects, variances, estimator, expected, tolerance } = one;
    const room = { ...tolerance, abs: 1e-8 };
    const plain = answerOf(randomEffectsMeta(effects, variances, { ...choices, estimator }));
    expectNear(plain.estimate, expected.est, room, "estimate");
    expectNear(plain.standardError, expected.se, room, "standard error");
    expectAllNear([plain.low, plain.high], expected.ci, room, "interval");
    expectNear(plain.p, expected.p, room, "p");
    expectNear(plain.q, expected.Q, room, "Q");
    expectNear(plain.qP, expected.Qp, tolerance, "chance of Q");
    expectNear(100 * plain.betweenShare, expected.I2, room, "I2");
    const knapp = answerOf(randomEffectsMeta(effects, variances, { ...choices, estimator, interval: "hartung-knapp" }));
    expectNear(knapp.standardError, expected.hk_se, room, "standard error, Hartung-Knapp");
    expectAllNear([knapp.low, knapp.high], expected.hk_ci, room, "interval, Hartung-Knapp");
    expectNear(knapp.p, expected.hk_p, room, "p, Hartung-Knapp");
  });

  // Viechtbauer, W. (2010), Journal of Statistical Software 36(3).
  it("BCG by restricted likelihood as printed: -0.7145 (0.1798), variance 0.3132, I2 92.22, Q 152.2330", () => {
    const { effects, variances } = METAFOR[0] as (typeof METAFOR)[number];
    const meta = answerOf(randomEffectsMeta(effects, variances, choices));
    expectNear(meta.estimate, -0.7145, { abs: 5e-5 });
    expectNear(meta.standardError, 0.1798, { abs: 5e-5 });
    expectNear(meta.betweenVariance, 0.3132, { abs: 5e-5 });
    expectNear(100 * meta.betweenShare, 92.22, { abs: 0.005 });
    expectNear(meta.q, 152.233, { abs: 5e-5 });
  });
});

describe("too little and bad input", () => {
  it("one study is too few of 2", () => {
    expect(randomEffectsMeta([1], [1], choices)).toEqual({ kind: "too-few", have: 1, need: 2 });
  });

  it("equal effects: Hartung and Knapp's interval has no width, the floored one that of t with the weighted error", () => {
    const bare = answerOf(randomEffectsMeta([2, 2, 2], [3, 3, 3], { ...choices, interval: "hartung-knapp" }));
    expect([bare.low, bare.high, bare.p]).toEqual([2, 2, 0]);
    const floored = answerOf(
      randomEffectsMeta([2, 2, 2], [3, 3, 3], { ...choices, interval: "hartung-knapp-floored" }),
    );
    expectNear(floored.high, 2 + 4.30265272974946, { rel: 1e-12 }, "2 + t(2) x sqrt(3 / 3)");
  });

  it("a confidence of 95 and a variance below 0 are refused", () => {
    expect(() => randomEffectsMeta([1, 2], [1, 1], { ...choices, confidence: 95 })).toThrow("got 95");
    expect(() => randomEffectsMeta([1, 2], [1, -1], choices)).toThrow(
      "variances[1] must be above 0 and finite, got -1",
    );
  });
});

describe("invariance", () => {
  const studies = fc.array(fc.tuple(fc.integer({ min: -30, max: 30 }), fc.integer({ min: 1, max: 40 })), {
    minLength: 2,
    maxLength: 8,
  });
  const intervals = fc.constantFrom("normal" as const, "hartung-knapp" as const, "hartung-knapp-floored" as const);

  it("order is nothing; a shift and a scale move mean and interval along, and leave Q and I2", () => {
    fc.assert(
      fc.property(studies, intervals, (list, interval) => {
        const meta = answerOf(
          randomEffectsMeta(
            list.map(([y]) => y),
            list.map(([, v]) => v),
            { ...choices, interval },
          ),
        );
        const back = [...list].reverse();
        const moved = answerOf(
          randomEffectsMeta(
            back.map(([y]) => 2 * y + 5),
            back.map(([, v]) => 4 * v),
            { ...choices, interval },
          ),
        );
        expectNear(moved.estimate, 2 * meta.estimate + 5, { rel: 1e-7, abs: 1e-7 });
        expectNear(moved.high, 2 * meta.high + 5, { rel: 1e-7, abs: 1e-7 });
        expectNear(moved.q, meta.q, { rel: 1e-9, abs: 1e-9 });
        expectNear(moved.betweenShare, meta.betweenShare, { abs: 1e-7 });
        expectNear(
          meta.weights.reduce((sum, weight) => sum + weight, 0),
          1,
          { rel: 1e-12 },
        );
      }),
      { numRuns: 40 },
    );
  });

  it("the floor only widens", () => {
    fc.assert(
      fc.property(studies, (list) => {
        const of = (interval: "hartung-knapp" | "hartung-knapp-floored") =>
          answerOf(
            randomEffectsMeta(
              list.map(([y]) => y),
              list.map(([, v]) => v),
              { ...choices, interval },
            ),
          );
        expect(of("hartung-knapp-floored").high).toBeGreaterThanOrEqual(of("hartung-knapp").high);
        expect(of("hartung-knapp-floored").standardError).toBeGreaterThanOrEqual(of("hartung-knapp").weightedError);
      }),
      { numRuns: 40 },
    );
  });
});

describe("calibration", () => {
  it("8 studies, between sd 1, error variances 0.2 to 1.6: Hartung and Knapp's 95 of 100 holds the mean in .95 of 1000 sets within .0276", () => {
    const normal = seededNormals(53);
    const variances = Array.from({ length: 8 }, (_, i) => 0.2 * (i + 1));
    const runs = 1000;
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const effects = drawnStudies(0.5, 1, variances, normal);
      const { low, high } = answerOf(
        randomEffectsMeta(effects, variances, { ...choices, estimator: "paule-mandel", interval: "hartung-knapp" }),
      );
      if (low <= 0.5 && 0.5 <= high) held++;
    }
    expectNear(held / runs, 0.95, { abs: monteCarloBand(0.95, runs) }, "held");
  });
});
