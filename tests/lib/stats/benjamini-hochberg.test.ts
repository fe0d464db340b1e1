import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { benjaminiHochberg } from "@/lib/stats/benjamini-hochberg";
import { expectAllNear, readReference } from "@/tests/reference/read-reference";
import { seeded } from "./made-series";

describe("reference: Benjamini & Hochberg (1995) and R's p.adjust", () => {
  it.each(readReference<{ p: number[] }, { BH: number[] }>("07_multiple_testing"))("$id, to 1e-12", (one) => {
    expectAllNear(benjaminiHochberg(one.input.p), one.expected.BH, one.tolerance, one.id);
  });
});

describe("too little and bad input", () => {
  it("no p-values give none", () => {
    expect(benjaminiHochberg([])).toEqual([]);
  });
  it.each([Number.NaN, -0.1, 1.1])("%d throws", (p) => {
    expect(() => benjaminiHochberg([0.5, p])).toThrow(String(p));
  });
});

describe("invariance", () => {
  it("order of the p-values doesn't matter, none gets smaller", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true })), (p) => {
        const adjusted = benjaminiHochberg(p);
        expect(benjaminiHochberg([...p].reverse()).reverse()).toEqual(adjusted);
        adjusted.forEach((value, i) => {
          expect(value).toBeGreaterThanOrEqual((p[i] as number) - 1e-15);
        });
      }),
    );
  });
});

describe("calibration: 4000 lists of 10, 5 true effects", () => {
  it("mean share of false among rejected at q = .1 is q x 5/10 = .05 within .012 (four standard errors)", () => {
    const random = seeded(17);
    let total = 0;
    for (let r = 0; r < 4000; r++) {
      const p = Array.from({ length: 10 }, (_, i) => (i < 5 ? random() : random() ** 6 * 0.05));
      const rejected = benjaminiHochberg(p).map((value) => value <= 0.1);
      const all = rejected.filter(Boolean).length;
      total += all === 0 ? 0 : rejected.slice(0, 5).filter(Boolean).length / all;
    }
    expect(Math.abs(total / 4000 - 0.05)).toBeLessThan(0.012);
  });
});
