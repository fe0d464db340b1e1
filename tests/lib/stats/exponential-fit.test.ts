import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ExponentialFit, type ExponentialOutcome, exponentialFit } from "@/lib/stats/exponential-fit";
import { tQuantile } from "@/lib/stats/t-distribution";
import { expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

function fitted(outcome: ExponentialOutcome): ExponentialFit {
  if (outcome.kind !== "ok") throw new Error(`expected a fit, got ${JSON.stringify(outcome)}`);
  return outcome.value;
}

describe("reference: NIST StRD Misra1a (certified) and R 4.2.2, nls(SSasymp), on Loblolly", () => {
  it("Misra1a, y = b1 (1 - exp(-b2 x)): estimates, errors and squares to 9 digits", () => {
    const [one] = readReference<
      { x: number[]; y: number[] },
      { b: number[]; se: number[]; RSS: number; residual_sd: number; df: number }
    >("03b_nonlinear_nist", "nist_nls_misra1a");
    if (!one) throw new Error("no case");
    const fit = fitted(exponentialFit(one.input.x, one.input.y, "zero"));
    const near = { rel: 1e-9 };
    expectAllNear([fit.asymptote, fit.rate], one.expected.b, near, "estimate");
    expect(fit.amplitude).toBe(-fit.asymptote);
    expectAllNear([fit.standardErrors[0], fit.standardErrors[2]], one.expected.se, near, "standard error");
    expectNear(fit.residualSquares, one.expected.RSS, near, "squares");
    expectNear(fit.residualSd, one.expected.residual_sd, near, "residual sd");
    expect(fit.degrees).toBe(one.expected.df);
  });

  // SSasymp's terms: asymptote, height at 0 = asymptote + amplitude, log of the rate.
  it("Loblolly: asymptote 94.13, height at 0 of -8.25, log rate -3.2176, with their errors", () => {
    const [one] = readReference<
      { x: number[]; y: number[] },
      { b: [number, number, number]; se: [number, number, number]; sigma: number; rss: number }
    >("03d_trend_regression", "loblolly");
    if (!one) throw new Error("no case");
    const fit = fitted(exponentialFit(one.input.x, one.input.y));
    const { asymptote, amplitude, rate, covariance: c } = fit;
    expectAllNear([asymptote, asymptote + amplitude, Math.log(rate)], one.expected.b, one.tolerance, "estimate");
    const entry = (i: number, j: number) => (c[i] as readonly number[])[j] as number;
    const height = Math.sqrt(entry(0, 0) + entry(1, 1) + 2 * entry(0, 1));
    const errors = [fit.standardErrors[0], height, fit.standardErrors[2] / rate];
    expectAllNear(errors, one.expected.se, one.tolerance, "standard error");
    expectNear(fit.residualSd, one.expected.sigma, one.tolerance, "sigma");
    expectNear(fit.residualSquares, one.expected.rss, one.tolerance, "squares");
  });
});

describe("too little and bad input", () => {
  it("three different x are too few of 4; held at zero, two above 0 are too few of 3", () => {
    expect(exponentialFit([1, 2, 3, 3], [1, 2, 2, 3])).toEqual({ kind: "too-few", have: 3, need: 4 });
    expect(exponentialFit([0, 1, 2], [0, 1, 2], "zero")).toEqual({ kind: "too-few", have: 2, need: 3 });
  });

  it("a level, a straight line, a curve that speeds up and a step are no curve that nears a level", () => {
    const x = [1, 2, 3, 4, 5, 6];
    expect(exponentialFit(x, [3, 3, 3, 3, 3, 3])).toEqual({ kind: "no-curvature", points: "flat" });
    expect(exponentialFit(x, x)).toEqual({ kind: "no-curvature", points: "straight" });
    expect(exponentialFit(x, [1, 2, 4, 8, 16, 32])).toEqual({ kind: "no-curvature", points: "straight" });
    expect(exponentialFit(x, [9, 2, 2.1, 1.9, 2, 2])).toEqual({ kind: "no-curvature", points: "step" });
  });

  it("unequal lengths, NaN, a weight of 0, an x below a start at zero and one far from 0 are refused", () => {
    const x = [1, 2, 3, 4];
    const y = [1, 2, 2.5, 2.7];
    expect(() => exponentialFit(x, [1])).toThrow("x must have 1 values, got 4");
    expect(() => exponentialFit(x, [1, 2, Number.NaN, 4])).toThrow("y[2]");
    expect(() => exponentialFit(x, y, "free", [1, 1, 0, 1])).toThrow("weights[2] must be above 0");
    expect(() => exponentialFit([-1, 2, 3, 4], y, "zero")).toThrow("x must be 0 or more, got -1");
    expect(() => exponentialFit([20001, 20002, 20003, 20004], y)).toThrow(
      "x must be counted from near its first value",
    );
  });
});

describe("invariance", () => {
  const shape = fc.tuple(
    fc.double({ min: -50, max: 50, noNaN: true }),
    fc.double({ min: 1, max: 40, noNaN: true }),
    fc.double({ min: 0.1, max: 1, noNaN: true }),
  );
  const x = [0, 1, 2, 3, 5, 8, 10];

  it("points on a curve give the curve back", () => {
    fc.assert(
      fc.property(shape, fc.constantFrom(-1, 1), ([asymptote, size, rate], way) => {
        const y = x.map((at) => asymptote + way * size * Math.exp(-rate * at));
        const fit = fitted(exponentialFit(x, y));
        expectAllNear([fit.asymptote, fit.amplitude, fit.rate], [asymptote, way * size, rate], {
          rel: 1e-7,
          abs: 1e-7,
        });
      }),
      { numRuns: 30 },
    );
  });

  const wobble = [0.3, -0.5, 0.2, 0.4, -0.4, 0.1, -0.1];
  it("order is nothing; units of x and y and a shift of y move along; moving x to start at 4 carries the amplitude back", () => {
    fc.assert(
      fc.property(shape, ([asymptote, size, rate]) => {
        const y = x.map((at, i) => asymptote - 20 * size * Math.exp(-rate * at) + (wobble[i] as number));
        const fit = fitted(exponentialFit(x, y));
        const moved = fitted(
          exponentialFit(x.map((at) => 4 + 7 * at).reverse(), y.map((value) => 3 * value - 11).reverse()),
        );
        const near = { rel: 1e-6, abs: 1e-9 };
        expectNear(moved.asymptote, 3 * fit.asymptote - 11, { rel: 1e-6, abs: 1e-6 }, "asymptote");
        expectNear(moved.rate, fit.rate / 7, near, "rate");
        expectNear(moved.amplitude, 3 * fit.amplitude * Math.exp((4 * fit.rate) / 7), near, "amplitude");
        expectNear(moved.standardErrors[0], 3 * fit.standardErrors[0], near, "error of the asymptote");
        expectNear(moved.standardErrors[2], fit.standardErrors[2] / 7, near, "error of the rate");
      }),
      { numRuns: 30 },
    );
  });

  it("a weight of 2 is a point said twice; no nearby curve has smaller squares, brute force", () => {
    const y = [1, 4, 5.5, 7.2, 8, 9.1, 9];
    const weighted = fitted(exponentialFit(x, y, "free", [1, 2, 1, 1, 2, 1, 1]));
    const twice = fitted(exponentialFit([...x, 1, 5], [...y, 4, 8]));
    expectNear(weighted.rate, twice.rate, { rel: 1e-9 });
    expectNear(weighted.residualSquares, twice.residualSquares, { rel: 1e-9 });
    const { asymptote, amplitude, rate, residualSquares } = fitted(exponentialFit(x, y));
    for (const da of [-1e-3, 0, 1e-3])
      for (const db of [-1e-3, 0, 1e-3])
        for (const dk of [-1e-4, 0, 1e-4]) {
          const squares = x.reduce(
            (sum, at, i) =>
              sum + ((y[i] as number) - asymptote - da - (amplitude + db) * Math.exp(-(rate + dk) * at)) ** 2,
            0,
          );
          expect(squares).toBeGreaterThanOrEqual(residualSquares * (1 - 1e-12));
        }
  });
});

describe("calibration", () => {
  it("12 points, 10 - 8 exp(-0.4 x), error sd 0.3: the 95 of 100 of asymptote and rate by t(9) hold in .95 of 200 series within .0616", () => {
    const normal = seededNormals(67);
    const at = Array.from({ length: 12 }, (_, i) => i);
    const runs = 200;
    const reach = -tQuantile(0.025, 9);
    const held = { asymptote: 0, rate: 0 };
    for (let run = 0; run < runs; run++) {
      const fit = fitted(
        exponentialFit(
          at,
          at.map((value) => 10 - 8 * Math.exp(-0.4 * value) + 0.3 * normal()),
        ),
      );
      if (Math.abs(fit.asymptote - 10) <= reach * fit.standardErrors[0]) held.asymptote++;
      if (Math.abs(fit.rate - 0.4) <= reach * fit.standardErrors[2]) held.rate++;
    }
    expectNear(held.asymptote / runs, 0.95, { abs: monteCarloBand(0.95, runs) }, "asymptote");
    expectNear(held.rate / runs, 0.95, { abs: monteCarloBand(0.95, runs) }, "rate");
  });
});
