import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Equivalence, equivalenceTest } from "@/lib/stats/equivalence-test";
import { pairedTest } from "@/lib/stats/paired-test";
import { welchTest } from "@/lib/stats/welch-test";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Expected {
  readonly diff: number;
  readonly se: number;
  readonly df: number;
  readonly p_lower: number;
  readonly p_upper: number;
  readonly tost_p: number;
  readonly ci90: [number, number];
}
interface Input {
  readonly x: number[];
  readonly y: number[];
  readonly low: number;
  readonly high: number;
}

function expectEquivalence(got: Equivalence, expected: Expected, tolerance: { rel?: number }): void {
  expectNear(got.lowerP, expected.p_lower, tolerance, "lower p");
  expectNear(got.upperP, expected.p_upper, tolerance, "upper p");
  expectNear(got.p, expected.tost_p, tolerance, "p");
  expectNear(got.low90, expected.ci90[0], tolerance, "low");
  expectNear(got.high90, expected.ci90[1], tolerance, "high");
}

describe("reference: yields of two kinds of corn, margins -110 and 110 (NCSS manual, ch. 198; R t.test)", () => {
  const [one] = readReference<Input, { welch: Expected; pooled: Expected }>("06b_two_group_tests", "tost_ncss_corn");
  if (!one) throw new Error("missing");
  const { x, y, low, high } = one.input;
  it("own spreads: p 0.03628, interval -100.8 to 84.6", () => {
    expectEquivalence(equivalenceTest(answerOf(welchTest(x, y, 0.95)), low, high), one.expected.welch, one.tolerance);
  });
  it("one pooled spread, 51.11 on 27 degrees: p 0.02821, interval -95.2 to 78.9", () => {
    const { diff, se, df } = one.expected.pooled;
    const estimate = { difference: diff, standardError: se, degrees: df };
    expectEquivalence(equivalenceTest(estimate, low, high), one.expected.pooled, one.tolerance);
  });
});

describe("too little and bad input", () => {
  const estimate = { difference: 0, standardError: 1, degrees: 9 };
  it("margins out of order, equal or infinite, an error or degrees of 0 and a NaN difference are refused", () => {
    expect(() => equivalenceTest(estimate, 1, -1)).toThrow("the margin 1 must lie below the margin -1");
    expect(() => equivalenceTest(estimate, 1, 1)).toThrow("the margin 1");
    expect(() => equivalenceTest(estimate, -1, Number.POSITIVE_INFINITY)).toThrow("margins[1]");
    expect(() => equivalenceTest({ ...estimate, standardError: 0 }, -1, 1)).toThrow("standardError");
    expect(() => equivalenceTest({ ...estimate, degrees: 0 }, -1, 1)).toThrow("degrees");
    expect(() => equivalenceTest({ ...estimate, difference: Number.NaN }, -1, 1)).toThrow("difference[0]");
  });
});

describe("invariance", () => {
  it("p is below 0.05 exactly when the 90 of 100 interval lies between the margins; turning all turns the tails", () => {
    const number = fc.integer({ min: -300, max: 300 });
    fc.assert(
      fc.property(
        number,
        fc.integer({ min: 1, max: 99 }),
        fc.integer({ min: 1, max: 40 }),
        number,
        number,
        (d, s, f, a, b) => {
          if (a === b) return;
          const [low, high] = a < b ? [a, b] : [b, a];
          const got = equivalenceTest({ difference: d, standardError: s, degrees: f }, low, high);
          expect(got.p < 0.05).toBe(got.low90 > low && got.high90 < high);
          const turned = equivalenceTest({ difference: -d, standardError: s, degrees: f }, -high, -low);
          expectNear(turned.lowerP, got.upperP, { rel: 1e-12 });
        },
      ),
    );
  });
});

describe("calibration", () => {
  it("a true difference on the margin is called equivalent 5 of 100, within 4 x 0.0034 (12 pairs, the other margin far)", () => {
    const normal = seededNormals(1987);
    const runs = 4000;
    let called = 0;
    for (let run = 0; run < runs; run++) {
      const estimate = answerOf(
        pairedTest(
          Array.from({ length: 12 }, () => 3 + normal()),
          0.95,
        ),
      );
      if (equivalenceTest(estimate, -3, 3).p < 0.05) called++;
    }
    expectNear(called / runs, 0.05, { abs: monteCarloBand(0.05, runs) });
  });
});
