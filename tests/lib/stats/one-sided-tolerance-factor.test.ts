import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalCdf, normalQuantile } from "@/lib/stats/normal-distribution";
import { oneSidedToleranceFactor } from "@/lib/stats/one-sided-tolerance-factor";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Input {
  readonly n: number;
  readonly coverage: number;
  readonly confidence: number;
}

describe("reference: mpmath on the definition of Odeh & Owen (1980), and NIST 7.2.6.3", () => {
  it.each(readReference<Input, { k: number }>("02c_tolerance_factors", "k1_"))("$id, 10 digits", (one) => {
    const k = answerOf(oneSidedToleranceFactor(one.input.n, one.input.coverage, one.input.confidence));
    expectNear(k, one.expected.k, one.tolerance, one.id);
    expectNear(k, one.expected.k, { rel: 1e-10 }, one.id);
  });

  // The handbook prints 1.8752, which is Natrella's closed form; the noncentral t gives 1.8740.
  it("43 resistivities, 90 of 100 with confidence 0.99: 1.8740, and not the closed form's 1.8752", () => {
    const [one] = readReference<Input, { k1_exact_noncentral_t: number; k1_natrella_approx: number }>(
      "02c_tolerance_factors",
      "nist_7263",
    );
    if (!one) throw new Error("no case");
    const k = answerOf(oneSidedToleranceFactor(one.input.n, one.input.coverage, one.input.confidence));
    expectNear(k, one.expected.k1_exact_noncentral_t, one.tolerance);
    expectNear(one.expected.k1_natrella_approx - k, 0.0012, { abs: 5e-5 }, "closed form less exact");
  });
});

describe("too little and bad input", () => {
  it("one value is too few of 2", () => {
    expect(oneSidedToleranceFactor(1, 0.9, 0.95)).toEqual({ kind: "too-few", have: 1, need: 2 });
  });

  it("half a value, a coverage of 90 and a confidence of 1 are refused", () => {
    expect(() => oneSidedToleranceFactor(2.5, 0.9, 0.95)).toThrow("count must be a whole number, got 2.5");
    expect(() => oneSidedToleranceFactor(5, 90, 0.95)).toThrow("coverage must lie between 0 and 1, got 90");
    expect(() => oneSidedToleranceFactor(5, 0.9, 1)).toThrow("confidence must lie between 0 and 1, got 1");
  });
});

describe("invariance", () => {
  it("more coverage or confidence takes a larger factor, and the mirrored question the mirrored factor", () => {
    const share = fc.double({ min: 0.05, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 40 }), share, share, (count, coverage, confidence) => {
        const k = answerOf(oneSidedToleranceFactor(count, coverage, confidence));
        expect(answerOf(oneSidedToleranceFactor(count, coverage + 0.05, confidence))).toBeGreaterThan(k);
        expect(answerOf(oneSidedToleranceFactor(count, coverage, confidence + 0.05))).toBeGreaterThan(k);
        const mirrored = answerOf(oneSidedToleranceFactor(count, 1 - coverage, 1 - confidence));
        expectNear(mirrored, -k, { rel: 1e-8, abs: 1e-8 });
      }),
      { numRuns: 25 },
    );
  });

  it("with a million values it nears the normal quantile: 1.2816 for 90 of 100", () => {
    expectNear(answerOf(oneSidedToleranceFactor(1e6, 0.9, 0.5)), normalQuantile(0.9), { rel: 1e-5 });
  });
});

describe("calibration", () => {
  it("10 values, 0.9 with confidence 0.95: mean + k sd lies above nine tenths in 95 of 100 of 4000 lists, within .0138", () => {
    const normal = seededNormals(23);
    const k = answerOf(oneSidedToleranceFactor(10, 0.9, 0.95));
    const runs = 4000;
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const drawn = Array.from({ length: 10 }, normal);
      const mean = drawn.reduce((sum, value) => sum + value, 0) / 10;
      const sd = Math.sqrt(drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 9);
      if (normalCdf(mean + k * sd) >= 0.9) held++;
    }
    expectNear(held / runs, 0.95, { abs: monteCarloBand(0.95, runs) }, "held");
  });
});
