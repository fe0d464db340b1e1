import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leastSquares } from "@/lib/stats/least-squares";
import { answerOf, expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";

interface Input {
  readonly y: number[];
  readonly x: number[] | number[][];
  readonly model: string;
}
interface Expected {
  readonly beta: number[];
  readonly se: number[];
  readonly residual_sd: number;
  readonly R2: number;
  readonly RSS: number;
}

function columnsOf(x: number[] | number[][]): number[][] {
  const rows = x.map((row) => (Array.isArray(row) ? row : [row]));
  return (rows[0] as number[]).map((_, j) => rows.map((row) => row[j] as number));
}

const plain = readReference<Input, Expected>("03a_linear_nist").filter(
  (one) => !one.input.model.startsWith("polynomial"),
);

describe("reference: NIST Statistical Reference Datasets, linear regression (certified)", () => {
  it.each(plain)("$id: coefficients, standard errors, residuals and R2 within the file's tolerance", (one) => {
    const model = one.input.model === "linear through the origin" ? "through-origin" : "with-constant";
    const fit = answerOf(leastSquares(columnsOf(one.input.x), one.input.y, model));
    expectAllNear(fit.coefficients, one.expected.beta, one.tolerance, "coefficient");
    expectAllNear(fit.standardErrors, one.expected.se, one.tolerance, "standard error");
    expectNear(fit.residualSd, one.expected.residual_sd, one.tolerance, "residual sd");
    expectNear(fit.residualSquares, one.expected.RSS, one.tolerance, "residual squares");
    expectNear(answerOf(fit.rSquared), one.expected.R2, one.tolerance, "R2");
  });

  it.each(plain)("$id: the same to 10 digits, tighter than the file asks", (one) => {
    const model = one.input.model === "linear through the origin" ? "through-origin" : "with-constant";
    const fit = answerOf(leastSquares(columnsOf(one.input.x), one.input.y, model));
    expectAllNear(fit.coefficients, one.expected.beta, { rel: 1e-10 }, "coefficient");
    expectAllNear(fit.standardErrors, one.expected.se, { rel: 1e-10 }, "standard error");
  });
});

describe("too little and bad input", () => {
  it("two values for a constant and a column are 2 of 3", () => {
    expect(leastSquares([[1, 2]], [1, 2], "with-constant")).toEqual({ kind: "too-few", have: 2, need: 3 });
  });

  it("a column that repeats another, or the constant, leaves 2 of 3 independent terms", () => {
    const y = [1, 3, 2, 5];
    const doubled = leastSquares(
      [
        [1, 2, 3, 4],
        [2, 4, 6, 8],
      ],
      y,
      "with-constant",
    );
    expect(doubled).toEqual({ kind: "too-few", have: 2, need: 3 });
    expect(
      leastSquares(
        [
          [1, 2, 3, 4],
          [7, 7, 7, 7],
        ],
        y,
        "with-constant",
      ),
    ).toEqual({ kind: "too-few", have: 2, need: 3 });
  });

  it("a flat y fits, but has no R2: 1 of 2 different values", () => {
    const fit = answerOf(leastSquares([[1, 2, 3]], [4, 4, 4], "with-constant"));
    expectAllNear(fit.coefficients, [4, 0], { abs: 1e-14 });
    expect(fit.rSquared).toEqual({ kind: "too-few", have: 1, need: 2 });
  });

  it("unequal lengths, NaN and a fit of nothing are refused", () => {
    expect(() => leastSquares([[1, 2]], [1, 2, 3], "with-constant")).toThrow("columns[0] must have 3 values, got 2");
    expect(() => leastSquares([[1, Number.NaN, 3]], [1, 2, 3], "with-constant")).toThrow("columns[0][1]");
    expect(() => leastSquares([], [1], "through-origin")).toThrow("got neither");
  });
});

describe("invariance", () => {
  const points = fc.array(
    fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 })),
    {
      minLength: 6,
      maxLength: 15,
    },
  );

  it("no coefficient moved a little gives a smaller sum of squares, brute force", () => {
    fc.assert(
      fc.property(points, fc.integer({ min: 0, max: 2 }), fc.constantFrom(-1e-3, 1e-3), (rows, which, step) => {
        const x = [rows.map((row) => row[0]), rows.map((row) => row[1])];
        const y = rows.map((row) => row[2]);
        const fit = leastSquares(x, y, "with-constant");
        if (fit.kind !== "ok") return;
        const moved = fit.value.coefficients.map((value, j) => (j === which ? value + step : value));
        const squares = rows.reduce(
          (sum, [a, b, c]) =>
            sum + (c - (moved[0] as number) - a * (moved[1] as number) - b * (moved[2] as number)) ** 2,
          0,
        );
        expect(squares).toBeGreaterThanOrEqual(fit.value.residualSquares * (1 - 1e-12));
      }),
    );
  });

  it("order of points is nothing; shifting a column moves the constant alone; scaling it scales its coefficient", () => {
    fc.assert(
      fc.property(points, (rows) => {
        const y = rows.map((row) => row[2]);
        const one = leastSquares([rows.map((row) => row[0]), rows.map((row) => row[1])], y, "with-constant");
        if (one.kind !== "ok") return;
        const back = [...rows].reverse();
        const other = answerOf(
          leastSquares(
            [back.map((row) => row[0] + 1000), back.map((row) => row[1] * 8)],
            back.map((row) => row[2]),
            "with-constant",
          ),
        );
        const [constant, first, second] = one.value.coefficients as [number, number, number];
        const expected = [constant - 1000 * first, first, second / 8];
        expectAllNear(other.coefficients, expected, { rel: 1e-8, abs: 1e-8 });
      }),
    );
  });
});
