import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gaussLegendre } from "@/lib/stats/gauss-legendre";
import { expectAllNear, expectNear } from "@/tests/reference/read-reference";
import { monteCarloBand, seededChances } from "./seeded-normals";

describe("reference: Abramowitz & Stegun (1964), Table 25.4, printed to 15 decimals", () => {
  it("5 places: 0, 0.5385, 0.9062 with weights 0.5689, 0.4786, 0.2369", () => {
    const { places, weights } = gaussLegendre(5, -1, 1);
    const far = 0.906179845938664;
    const near = 0.538469310105683;
    expectAllNear(places, [-far, -near, 0, near, far], { abs: 6e-16 }, "place");
    const [outer, inner] = [0.236926885056189, 0.478628670499366];
    expectAllNear(weights, [outer, inner, 0.568888888888889, inner, outer], { abs: 6e-16 }, "weight");
  });

  it("12 places: the outermost 0.9816 with 0.0472, the innermost 0.1252 with 0.2491", () => {
    const { places, weights } = gaussLegendre(12, -1, 1);
    expectAllNear([places[11] as number, places[6] as number], [0.981560634246719, 0.125233408511469], { abs: 6e-16 });
    expectAllNear([weights[11] as number, weights[6] as number], [0.047175336386512, 0.249147045813403], {
      abs: 6e-16,
    });
  });
});

describe("too little and bad input", () => {
  it("one place is the middle with the whole length", () => {
    expect(gaussLegendre(1, 2, 6)).toEqual({ places: [4], weights: [4] });
  });

  it("no place, half a place and an endless end are refused", () => {
    expect(() => gaussLegendre(0, 0, 1)).toThrow("count must be whole, 1 or more, got 0");
    expect(() => gaussLegendre(2.5, 0, 1)).toThrow("got 2.5");
    expect(() => gaussLegendre(3, 0, Number.POSITIVE_INFINITY)).toThrow("ends must be finite, got 0, Infinity");
  });
});

describe("invariance", () => {
  it("powers up to 2 count - 1 come out exactly, from 0 to 1: 1 / (power + 1)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 80 }), fc.integer({ min: 0, max: 159 }), (count, power) => {
        const { places, weights } = gaussLegendre(count, 0, 1);
        const degree = Math.min(power, 2 * count - 1);
        const sum = places.reduce((total, place, i) => total + (weights[i] as number) * place ** degree, 0);
        expectNear(sum, 1 / (degree + 1), { rel: 1e-12 });
      }),
    );
  });

  it("places ascend and lie inside, weights are above 0, a shift moves the places alone", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: -5, max: 5, noNaN: true }), (count, shift) => {
        const { places, weights } = gaussLegendre(count, 0, 2);
        places.forEach((place, i) => {
          expect(place).toBeGreaterThan(places[i - 1] ?? 0);
          expect(place).toBeLessThan(2);
          expect(weights[i]).toBeGreaterThan(0);
        });
        const moved = gaussLegendre(count, shift, 2 + shift);
        expectAllNear(
          moved.places,
          places.map((place) => place + shift),
          { abs: 1e-14 },
        );
      }),
    );
  });
});

describe("calibration", () => {
  it("the area under half a circle, 64 places: 0.7854 as 20,000 drawn points have it, within 4 standard errors (.0116)", () => {
    const chance = seededChances(5);
    const runs = 20_000;
    let under = 0;
    for (let run = 0; run < runs; run++) if (chance() ** 2 + chance() ** 2 < 1) under++;
    const { places, weights } = gaussLegendre(64, 0, 1);
    const area = places.reduce((sum, place, i) => sum + (weights[i] as number) * Math.sqrt(1 - place * place), 0);
    expectNear(area, Math.PI / 4, { abs: 1e-6 }, "area");
    expectNear(under / runs, area, { abs: monteCarloBand(area, runs) }, "drawn");
  });
});
