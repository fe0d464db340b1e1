import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { metaPredictionInterval } from "@/lib/stats/meta-prediction-interval";
import { type MetaChoices, randomEffectsMeta } from "@/lib/stats/random-effects-meta";
import { answerOf, expectAllNear, expectNear } from "@/tests/reference/read-reference";
import { drawnStudies, METAFOR } from "./made-studies";
import { monteCarloBand, seededNormals } from "./seeded-normals";

const choices: MetaChoices = { estimator: "paule-mandel", interval: "hartung-knapp", confidence: 0.95 };

describe("reference: R metafor 3.8.1, predict, on the BCG trials (Colditz et al. 1994) and two small sets", () => {
  // metafor's default (normal), Hartung and Knapp's with k - 1 degrees and Higgins's with k - 2 are three intervals.
  it.each(METAFOR)("$id by $estimator: all three intervals within 1e-5", (one) => {
    const meta = answerOf(randomEffectsMeta(one.effects, one.variances, { ...choices, estimator: one.estimator }));
    const room = { ...one.tolerance, abs: 1e-6 };
    const ends = (rule: "normal" | "hartung-knapp" | "higgins") => {
      const { low, high } = answerOf(metaPredictionInterval(meta, rule, 0.95));
      return [low, high];
    };
    expectAllNear(ends("normal"), one.expected.pi_normal, room, "normal");
    expectAllNear(ends("hartung-knapp"), one.expected.hk_pi, room, "Hartung-Knapp");
    if (one.expected.pi_higgins_t_kminus2)
      expectAllNear(ends("higgins"), one.expected.pi_higgins_t_kminus2, room, "Higgins");
    else expect(metaPredictionInterval(meta, "higgins", 0.95)).toEqual({ kind: "too-few", have: 2, need: 3 });
  });
});

describe("too little and bad input", () => {
  const meta = answerOf(randomEffectsMeta([1, 3], [1, 1], choices));

  it("two studies are too few of 3 for k - 2 degrees; the other rules answer", () => {
    expect(metaPredictionInterval(meta, "higgins", 0.95)).toEqual({ kind: "too-few", have: 2, need: 3 });
    expect(metaPredictionInterval(meta, "normal", 0.95).kind).toBe("ok");
  });

  it("a confidence of 1 is refused", () => {
    expect(() => metaPredictionInterval(meta, "normal", 1)).toThrow("confidence must lie between 0 and 1, got 1");
  });
});

describe("invariance", () => {
  it("never narrower than the mean's own interval; a shift and a scale move along", () => {
    const studies = fc.array(fc.tuple(fc.integer({ min: -30, max: 30 }), fc.integer({ min: 1, max: 40 })), {
      minLength: 3,
      maxLength: 8,
    });
    fc.assert(
      fc.property(studies, (list) => {
        const meta = answerOf(
          randomEffectsMeta(
            list.map(([y]) => y),
            list.map(([, v]) => v),
            choices,
          ),
        );
        const moved = answerOf(
          randomEffectsMeta(
            list.map(([y]) => 2 * y + 5),
            list.map(([, v]) => 4 * v),
            choices,
          ),
        );
        const one = answerOf(metaPredictionInterval(meta, "hartung-knapp", 0.95));
        expect(one.high).toBeGreaterThanOrEqual(meta.high - 1e-9);
        expectNear(
          answerOf(metaPredictionInterval(moved, "higgins", 0.95)).low,
          2 * answerOf(metaPredictionInterval(meta, "higgins", 0.95)).low + 5,
          {
            rel: 1e-7,
            abs: 1e-7,
          },
        );
      }),
      { numRuns: 40 },
    );
  });
});

describe("calibration", () => {
  it("20 studies, between sd 1, error variance 0.1: Hartung and Knapp's 95 of 100 holds one further true effect in .95 of 600 sets within .0356", () => {
    const normal = seededNormals(59);
    const variances = new Array<number>(20).fill(0.1);
    const runs = 600;
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const meta = answerOf(randomEffectsMeta(drawnStudies(0, 1, variances, normal), variances, choices));
      const { low, high } = answerOf(metaPredictionInterval(meta, "hartung-knapp", 0.95));
      const further = normal();
      if (low <= further && further <= high) held++;
    }
    expectNear(held / runs, 0.95, { abs: monteCarloBand(0.95, runs) }, "held");
  });
});
