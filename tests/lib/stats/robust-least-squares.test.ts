import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { robustLeastSquares } from "@/lib/stats/robust-least-squares";
import { tQuantile } from "@/lib/stats/t-distribution";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

interface Longley {
  readonly y: number[];
  readonly x: number[][];
}

function longley() {
  const [one] = readReference<Longley, unknown>("03a_linear_nist", "nist_linear_longley");
  const { x, y } = (one as { input: Longley }).input;
  return { y, columns: (x[0] as number[]).map((_, j) => x.map((row) => row[j] as number)) };
}

describe("reference", () => {
  it("HC3 standard errors of the Longley data as SAS prints them, within half a unit of the last digit", () => {
    // Printed in the tests of a Python library's linear models ("Compare values computed with SAS"), constant first.
    const printed = [1799477, 91.11939, 0.05562, 0.82213, 0.29879, 0.32491, 922.80784];
    const digits = [0.5, 5e-6, 5e-6, 5e-6, 5e-6, 5e-6, 5e-6];
    const { y, columns } = longley();
    const { standardErrors } = answerOf(robustLeastSquares(columns, y, "with-constant"));
    printed.forEach((value, i) => {
      expectNear(standardErrors[i] as number, value, { abs: (digits[i] as number) * 1.01 }, `error ${i}`);
    });
  });

  it("of two groups, the formula by hand: each variance is its squares over (n - 1)^2", () => {
    const y = [1, 2, 4, 9, 3, 8, 5, 7];
    const group = [0, 0, 0, 0, 1, 1, 1, 1];
    const { standardErrors } = answerOf(robustLeastSquares([group], y, "with-constant"));
    const squares = (of: number[]) => of.reduce((sum, v) => sum + (v - of.reduce((a, b) => a + b) / 4) ** 2, 0);
    // Leverage 1/4, so each residual is taken 4/3 times, and the mean is a quarter of the sum.
    const byHand = Math.sqrt((squares(y.slice(0, 4)) + squares(y.slice(4))) / 9);
    expectNear(standardErrors[1] as number, byHand, { rel: 1e-12 });
  });
});

describe("too little and bad input", () => {
  it("as many values as coefficients, or dependent columns: too few", () => {
    expect(robustLeastSquares([[1, 2]], [1, 2], "with-constant").kind).toBe("too-few");
    const one = [1, 2, 3, 4, 5];
    expect(robustLeastSquares([one, one.map((v) => 2 * v)], [3, 1, 4, 1, 5], "with-constant").kind).toBe("too-few");
  });
  it("NaN and unequal lengths throw", () => {
    expect(() => robustLeastSquares([[1, 2, 3]], [1, Number.NaN, 2], "with-constant")).toThrow(RangeError);
    expect(() => robustLeastSquares([[1, 2]], [1, 2, 3], "with-constant")).toThrow("columns[0]");
  });
  it("a value alone in its column counts as nothing, and nothing becomes NaN", () => {
    const fit = answerOf(robustLeastSquares([[0, 0, 0, 0, 1]], [1, 2, 3, 4, 9], "with-constant"));
    expect(fit.leverages[4]).toBeCloseTo(1, 12);
    expect(fit.standardErrors.every(Number.isFinite)).toBe(true);
  });
});

describe("invariance", () => {
  it("leaving a value out lowers each coefficient by its influence, for each value", () => {
    const values = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(values, values), { minLength: 6, maxLength: 12 }), (pairs) => {
        const x = pairs.map(([first], i) => first + i * 7);
        const y = pairs.map(([, second]) => second);
        const fit = answerOf(robustLeastSquares([x], y, "with-constant"));
        x.forEach((_, i) => {
          if ((fit.leverages[i] as number) > 0.999) return;
          const rest = answerOf(robustLeastSquares([x.toSpliced(i, 1)], y.toSpliced(i, 1), "with-constant"));
          const expected = fit.fit.coefficients.map((value, j) => value - (fit.influence[j]?.[i] as number));
          expectAllNear(rest.fit.coefficients, expected, { abs: 1e-5, rel: 1e-6 });
        });
      }),
      { numRuns: 60 },
    );
  });
  it("the unit of y scales the errors", () => {
    const { y, columns } = longley();
    const once = answerOf(robustLeastSquares(columns, y, "with-constant"));
    const thrice = answerOf(
      robustLeastSquares(
        columns,
        y.map((v) => 3 * v),
        "with-constant",
      ),
    );
    expectAllNear(
      thrice.standardErrors,
      once.standardErrors.map((v) => 3 * v),
      { rel: 1e-6 },
    );
  });
});

describe("calibration", () => {
  it("2000 fits, one group of 8 spread twice as wide as the other of 24: 95 of 100 intervals hold .95 to .99", () => {
    const normal = seededNormals(77);
    const runs = 2000;
    const group = Array.from({ length: 32 }, (_, i) => (i < 8 ? 1 : 0));
    let held = 0;
    for (let run = 0; run < runs; run++) {
      const y = group.map((of) => (of === 1 ? 2 : 1) * normal());
      const { fit, standardErrors } = answerOf(robustLeastSquares([group], y, "with-constant"));
      const reach = -tQuantile(0.025, fit.degrees) * (standardErrors[1] as number);
      if (Math.abs(fit.coefficients[1] as number) <= reach) held++;
    }
    // HC3 is on the wide side by design (MacKinnon and White 1985).
    expect(held / runs).toBeGreaterThan(0.95 - monteCarloBand(0.95, runs));
    expect(held / runs).toBeLessThan(0.99);
  });
});
