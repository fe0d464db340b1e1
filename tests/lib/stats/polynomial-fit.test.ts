import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { polynomialFit } from "@/lib/stats/polynomial-fit";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly y: number[];
  readonly x: number[];
  readonly model: string;
}
interface Expected {
  readonly beta: number[];
  readonly se: number[];
  readonly residual_sd: number;
  readonly R2: number;
  readonly RSS: number;
}

const cases = [
  ...readReference<Input, Expected>("03a_linear_nist"),
  ...readReference<Input, Expected>("03f_filip_nist"),
].filter((one) => one.input.model.startsWith("polynomial degree "));

function fitOf({ input }: { readonly input: Input }) {
  return answerOf(polynomialFit(input.x, input.y, Number(input.model.slice("polynomial degree ".length))));
}

describe("reference: NIST Statistical Reference Datasets, polynomials (certified)", () => {
  it.each(cases)("$id: coefficients, standard errors, residuals and R2 within the file's tolerance", (one) => {
    const fit = fitOf(one);
    expectAllNear(fit.coefficients, one.expected.beta, one.tolerance, "coefficient");
    expectAllNear(fit.standardErrors, one.expected.se, one.tolerance, "standard error");
    expectNear(fit.residualSd, one.expected.residual_sd, one.tolerance, "residual sd");
    expectNear(fit.residualSquares, one.expected.RSS, one.tolerance, "residual squares");
    expectNear(answerOf(fit.rSquared), one.expected.R2, one.tolerance, "R2");
  });

  it("Filip, degree 10: the certified numbers as printed, to 12 digits", () => {
    const [filip] = readReference<Input, Expected>("03f_filip_nist") as [(typeof cases)[0]];
    const printed = filip.published as Expected;
    expectAllNear(fitOf(filip).coefficients, printed.beta, { rel: 1e-12 }, "coefficient");
    expectAllNear(fitOf(filip).standardErrors, printed.se, { rel: 1e-12 }, "standard error");
  });
});

describe("too little and bad input", () => {
  it("three points for a parabola are 3 of 4; four points at two places are 2 of 3 different x", () => {
    expect(polynomialFit([1, 2, 3], [1, 2, 3], 2)).toEqual({ kind: "too-few", have: 3, need: 4 });
    expect(polynomialFit([1, 1, 2, 2], [1, 2, 3, 4], 2)).toEqual({ kind: "too-few", have: 2, need: 3 });
  });

  it("unequal lengths, NaN and half a degree are refused", () => {
    expect(() => polynomialFit([1, 2], [1, 2, 3], 1)).toThrow("x must have 3 values, got 2");
    expect(() => polynomialFit([1, 2, Number.NaN], [1, 2, 3], 1)).toThrow("x[2]");
    expect(() => polynomialFit([1, 2, 3], [1, 2, 3], 1.5)).toThrow("degree must be whole, 1 or more, got 1.5");
  });
});

describe("invariance", () => {
  it("points on a cubic give back its coefficients, wherever the points lie", () => {
    const small = fc.integer({ min: -9, max: 9 });
    fc.assert(
      fc.property(small, small, small, small, fc.integer({ min: -20, max: 20 }), (a, b, c, d, from) => {
        const x = Array.from({ length: 9 }, (_, i) => from + i);
        const y = x.map((v) => a + b * v + c * v * v + d * v * v * v);
        const fit = answerOf(polynomialFit(x, y, 3));
        expectAllNear(fit.coefficients, [a, b, c, d], { abs: 1e-7, rel: 1e-9 });
      }),
    );
  });
});
