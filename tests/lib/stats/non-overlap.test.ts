import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nonOverlap } from "@/lib/stats/non-overlap";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Phases {
  readonly A: number[];
  readonly B: number[];
  readonly improvement?: string;
}
interface Printed {
  readonly nap: number;
  readonly tau: number;
  readonly tau_u_minus_baseline_trend: number;
}

describe("reference: Parker, Vannest & Davis (2011), worked examples, and McKissick and others (2010) in R SingleCaseES", () => {
  it.each(readReference<Phases, Printed>("06a_nonoverlap"))("$id, to 1e-12", ({ input, expected, tolerance }) => {
    const sign = input.improvement === "decrease" ? -1 : 1;
    const found = answerOf(
      nonOverlap(
        input.A.map((value) => sign * value),
        input.B.map((value) => sign * value),
      ),
    );
    expectNear(found.pairs, expected.nap, tolerance);
    expectNear(found.tau, expected.tau, tolerance);
    expectNear(found.tauWithoutTrend, expected.tau_u_minus_baseline_trend, tolerance);
  });
});

describe("too little and bad input", () => {
  it("an empty phase: too few; NaN throws", () => {
    expect(nonOverlap([], [1])).toEqual({ kind: "too-few", have: 0, need: 1 });
    expect(nonOverlap([1], [])).toEqual({ kind: "too-few", have: 0, need: 1 });
    expect(() => nonOverlap([1], [Number.NaN])).toThrow(RangeError);
  });
});

describe("invariance", () => {
  it("only order counts: a rising curve changes nothing, a mirror turns tau about", () => {
    const phase = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 1, maxLength: 10 });
    fc.assert(
      fc.property(phase, phase, (first, second) => {
        const found = answerOf(nonOverlap(first, second));
        const curved = (values: number[]) => values.map((value) => value ** 3 + 2 * value);
        expect(answerOf(nonOverlap(curved(first), curved(second)))).toEqual(found);
        const mirrored = answerOf(
          nonOverlap(
            first.map((value) => -value),
            second.map((value) => -value),
          ),
        );
        expectNear(mirrored.tau, -found.tau, { abs: 1e-12 });
        expectNear(found.tau, 2 * found.pairs - 1, { abs: 1e-12 });
      }),
    );
  });
});

describe("calibration", () => {
  it("of two normals one sd apart the second is higher in .7602 of pairs (normal curve of 1 / sqrt 2), 4000 draws", () => {
    const normal = seededNormals(12);
    const runs = 4000;
    let sum = 0;
    for (let run = 0; run < runs; run++) sum += answerOf(nonOverlap([normal()], [1 + normal()])).pairs;
    expectNear(sum / runs, 0.76025, { abs: monteCarloBand(0.76025, runs) });
  });
});
