import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { spentError } from "@/lib/stats/spent-error";
import { expectNear } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

describe("reference", () => {
  // The printed example of the Julia package SeqBounds (README): one side of .05; both sides of .10 are twice as much.
  it("one side of .05 at .25, .5, .75 and 1 of the information: 8.85754e-5, .0055746, .0236251, .05", () => {
    const printed = [8.85754e-5, 0.0055746, 0.0236251, 0.05];
    for (const [look, spent] of printed.entries())
      expectNear(spentError((look + 1) / 4, 0.1) / 2, spent, { rel: 3e-6 }, String(look));
  });
});

describe("too little and bad input", () => {
  it("more than all of it is all of it", () => {
    expect(spentError(1.2, 0.05)).toBe(0.05);
  });
  it("nothing, NaN and a level of 5 are refused", () => {
    expect(() => spentError(0, 0.05)).toThrow("got 0");
    expect(() => spentError(Number.NaN, 0.05)).toThrow("got NaN");
    expect(() => spentError(0.5, 5)).toThrow("got 5");
  });
});

describe("invariance", () => {
  it("rises with the information but for the last digits, and never passes the level", () => {
    const share = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, fc.double({ min: 0.001, max: 0.3, noNaN: true }), (one, other, level) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        expect(spentError(low, level)).toBeLessThanOrEqual(spentError(high, level) * (1 + 1e-13));
        expect(spentError(high, level)).toBeLessThanOrEqual(level);
      }),
    );
  });
  it("one rounding short of 1 spends no more than all, at each of 3000 levels", () => {
    for (let i = 1; i <= 3000; i++) expect(spentError(1 - 2 ** -53, i / 10_000)).toBeLessThanOrEqual(i / 10_000);
  });
});

describe("calibration", () => {
  // A walk seen only at its steps passes an edge as one seen all the time passes one .5826 of a step farther: Siegmund (1979), from memory.
  it("it is the chance that a random walk has passed by half way what bounds it at the end: 4000 walks, within 4 standard errors", () => {
    const normal = seededNormals(3);
    const [runs, steps] = [4000, 1000];
    const edge = 1.9599639845400545 - 0.5826 / Math.sqrt(steps);
    let passed = 0;
    for (let run = 0; run < runs; run++) {
      let sum = 0;
      for (let step = 0; step < steps / 2 && sum < edge; step++) sum += normal() / Math.sqrt(steps);
      if (sum >= edge) passed++;
    }
    const said = spentError(0.5, 0.1) / 2;
    expectNear(passed / runs, said, { abs: monteCarloBand(said, runs) });
  });
});
