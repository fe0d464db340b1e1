import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betweenStudyVariance } from "@/lib/stats/between-study-variance";
import { answerOf, expectNear } from "@/tests/reference/read-reference";
import { drawnStudies, METAFOR } from "./made-studies";
import { seededNormals } from "./seeded-normals";

const ESTIMATORS = ["moments", "paule-mandel", "restricted-likelihood"] as const;

describe("reference: R metafor 3.8.1, rma, on the BCG trials (Colditz et al. 1994) and two small sets", () => {
  it.each(METAFOR)("$id by $estimator: within 1e-5", ({ effects, variances, estimator, expected, tolerance }) => {
    expectNear(answerOf(betweenStudyVariance(effects, variances, estimator)), expected.tau2, {
      abs: 1e-8,
      ...tolerance,
    });
  });
});

describe("too little and bad input", () => {
  it("one study is too few of 2; equal effects have no variance between them", () => {
    for (const estimator of ESTIMATORS) {
      expect(betweenStudyVariance([1], [1], estimator)).toEqual({ kind: "too-few", have: 1, need: 2 });
      expect(betweenStudyVariance([2, 2, 2], [1, 2, 3], estimator)).toEqual({ kind: "ok", value: 0 });
    }
  });

  it("a variance of 0, unequal lengths and NaN are refused", () => {
    expect(() => betweenStudyVariance([1, 2], [1, 0], "moments")).toThrow("variances[1] must be above 0");
    expect(() => betweenStudyVariance([1, 2], [1], "moments")).toThrow("variances must have 2 values, got 1");
    expect(() => betweenStudyVariance([1, Number.NaN], [1, 1], "moments")).toThrow("effects[1]");
  });
});

describe("invariance", () => {
  const studies = fc.array(fc.tuple(fc.integer({ min: -30, max: 30 }), fc.integer({ min: 1, max: 40 })), {
    minLength: 2,
    maxLength: 10,
  });

  it("order and a shift are nothing; a scale comes out squared", () => {
    fc.assert(
      fc.property(studies, fc.constantFrom(...ESTIMATORS), (list, estimator) => {
        const one = answerOf(
          betweenStudyVariance(
            list.map(([y]) => y),
            list.map(([, v]) => v),
            estimator,
          ),
        );
        const back = [...list].reverse();
        const moved = answerOf(
          betweenStudyVariance(
            back.map(([y]) => 3 * y - 7),
            back.map(([, v]) => 9 * v),
            estimator,
          ),
        );
        expectNear(moved, 9 * one, { rel: 1e-7, abs: 1e-7 });
      }),
      { numRuns: 40 },
    );
  });

  it("equal variances: all three are the sample variance less the error variance, or 0", () => {
    fc.assert(
      fc.property(studies, fc.constantFrom(...ESTIMATORS), (list, estimator) => {
        const effects = list.map(([y]) => y);
        const mean = effects.reduce((sum, y) => sum + y, 0) / effects.length;
        const sample = effects.reduce((sum, y) => sum + (y - mean) ** 2, 0) / (effects.length - 1);
        const value = answerOf(
          betweenStudyVariance(
            effects,
            effects.map(() => 20),
            estimator,
          ),
        );
        expectNear(value, Math.max(0, sample - 20), { rel: 1e-9, abs: 1e-7 });
      }),
      { numRuns: 40 },
    );
  });
});

describe("calibration", () => {
  it("400 sets of 20 studies with a between variance of 4: each estimator's mean within 4 standard errors (.4) of it", () => {
    const normal = seededNormals(47);
    const variances = Array.from({ length: 20 }, (_, i) => 0.5 + 0.1 * i);
    const sets = Array.from({ length: 400 }, () => drawnStudies(0, 2, variances, normal));
    for (const estimator of ESTIMATORS) {
      const found = sets.map((effects) => answerOf(betweenStudyVariance(effects, variances, estimator)));
      const mean = found.reduce((sum, one) => sum + one, 0) / found.length;
      const sd = Math.sqrt(found.reduce((sum, one) => sum + (one - mean) ** 2, 0) / found.length);
      expectNear(mean, 4, { abs: (4 * sd) / Math.sqrt(found.length) }, estimator);
    }
  });
});
