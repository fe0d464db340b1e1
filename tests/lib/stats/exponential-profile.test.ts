import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ExponentialPoints, exponentialProfile } from "@/lib/stats/exponential-profile";
import { leastSquares } from "@/lib/stats/least-squares";
import { answerOf, expectNear, readReference } from "@/tests/reference/read-reference";
import { seededNormals } from "./seeded-normals";

function pointsOf(places: number[], y: number[], start: "free" | "zero", weights = y.map(() => 1)): ExponentialPoints {
  const roots = weights.map(Math.sqrt);
  return { places, roots, heights: y.map((value, i) => value * (roots[i] as number)), start };
}

describe("reference: NIST StRD Misra1a (certified)", () => {
  it("held at 0, at the certified rate: certified asymptote and squares to 9 digits, and next to no slope", () => {
    const [one] = readReference<{ x: number[]; y: number[] }, { b: [number, number]; RSS: number }>(
      "03b_nonlinear_nist",
      "nist_nls_misra1a",
    );
    if (!one) throw new Error("no case");
    const { x, y } = one.input;
    const [asymptote, rate] = one.expected.b;
    const bend = rate * 760;
    const best = exponentialProfile(
      bend,
      pointsOf(
        x.map((value) => value / 760),
        y,
        "zero",
      ),
    );
    expectNear(best.climb / bend, asymptote, { rel: 1e-9 }, "asymptote");
    expectNear(best.squares, one.expected.RSS, { rel: 1e-9 }, "squares");
    expect(best.level).toBe(0);
    expect(Math.abs(best.slope)).toBeLessThan(1e-6);
  });
});

describe("too little and bad input", () => {
  it("all points at one place can't tell level from climb; a bend of 0 is no curve", () => {
    expect(() => exponentialProfile(1, pointsOf([0.5, 0.5, 0.5], [1, 2, 3], "free"))).toThrow("rank 1 of 2");
    expect(() => exponentialProfile(0, pointsOf([0, 0.5, 1], [1, 2, 3], "free"))).toThrow("bend must be above 0");
  });
});

describe("invariance", () => {
  const lists = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 5, maxLength: 12 });
  const bends = fc.double({ min: 0.2, max: 8, noNaN: true });
  const start = fc.constantFrom("free" as const, "zero" as const);
  const placesOf = (y: number[]) => y.map((_, i) => (i + 1) / y.length);

  it("the slope is how the squares change, by a small step either way", () => {
    fc.assert(
      fc.property(lists, bends, start, (y, bend, from) => {
        const points = pointsOf(
          placesOf(y),
          y,
          from,
          y.map((_, i) => 1 + (i % 3)),
        );
        const step = 1e-5 * bend;
        const rise = exponentialProfile(bend + step, points).squares - exponentialProfile(bend - step, points).squares;
        const { slope, squares } = exponentialProfile(bend, points);
        expectNear(slope, rise / (2 * step), { rel: 1e-4, abs: 1e-6 * (1 + squares) });
      }),
    );
  });

  it("the squares are those of plain least squares on exp(-bend place)", () => {
    fc.assert(
      fc.property(lists, bends, (y, bend) => {
        const places = placesOf(y);
        const fit = answerOf(leastSquares([places.map((place) => Math.exp(-bend * place))], y, "with-constant"));
        const { squares, level, climb } = exponentialProfile(bend, pointsOf(places, y, "free"));
        expectNear(squares, fit.residualSquares, { rel: 1e-8, abs: 1e-8 });
        expectNear(level + climb / bend, fit.coefficients[0] as number, { rel: 1e-7, abs: 1e-7 });
      }),
    );
  });
});

describe("calibration", () => {
  it("1000 series of 10 points about a curve of the same bend, error sd 1: squares of 8 on average, within 4 x 4 / sqrt(1000)", () => {
    const normal = seededNormals(103);
    const places = Array.from({ length: 10 }, (_, i) => i / 9);
    const runs = 1000;
    let total = 0;
    for (let run = 0; run < runs; run++) {
      const y = places.map((place) => 5 - 9 * Math.exp(-3 * place) + normal());
      total += exponentialProfile(3, pointsOf(places, y, "free")).squares;
    }
    expectNear(total / runs, 8, { abs: (4 * Math.sqrt(2 * 8)) / Math.sqrt(runs) }, "squares");
  });
});
