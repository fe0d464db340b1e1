import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { holm } from "@/lib/stats/holm";
import { expectAllNear, expectNear, readReference } from "@/tests/reference/read-reference";
import { monteCarloBand, seededChances } from "./seeded-normals";

describe("reference: R's p.adjust, Benjamini & Hochberg's (1995) 15 values among them", () => {
  it.each(readReference<{ p: number[] }, { holm: number[] }>("07_multiple_testing"))("$id, to 1e-12", (one) => {
    expectAllNear(holm(one.input.p), one.expected.holm, one.tolerance, one.id);
  });
});

describe("too little and bad input", () => {
  it("no p-values give none", () => {
    expect(holm([])).toEqual([]);
  });
  it.each([Number.NaN, -0.1, 1.1])("%d throws", (p) => {
    expect(() => holm([0.5, p])).toThrow(String(p));
  });
});

describe("invariance", () => {
  it("order is nothing; none gets smaller, none above its number times itself", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true })), (p) => {
        const adjusted = holm(p);
        expect(holm([...p].reverse()).reverse()).toEqual(adjusted);
        const least = Math.min(...p);
        adjusted.forEach((value, i) => {
          expect(value).toBeGreaterThanOrEqual(p[i] as number);
          if (p[i] === least) expect(value).toBe(Math.min(1, least * p.length));
        });
      }),
    );
  });
});

describe("calibration", () => {
  it("4000 lists of 10 true nulls: 1 - (1 - .05 / 10)^10 = .0489 of lists hold a rejection, within 4 x .0034", () => {
    const chance = seededChances(41);
    const runs = 4000;
    const truth = 1 - (1 - 0.005) ** 10;
    let lists = 0;
    for (let r = 0; r < runs; r++) if (holm(Array.from({ length: 10 }, chance)).some((p) => p <= 0.05)) lists++;
    expectNear(lists / runs, truth, { abs: monteCarloBand(truth, runs) });
  });
});
