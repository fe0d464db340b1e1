import { describe, expect, it } from "vitest";
import { crossingChances } from "@/lib/stats/crossing-chances";
import { normalUpperTail } from "@/lib/stats/normal-distribution";
import { expectNear } from "@/tests/reference/read-reference";
import { monteCarloBand, seededNormals } from "./seeded-normals";

const either = (looks: readonly { up: number; down: number }[]): number =>
  looks.reduce((sum, { up, down }) => sum + up + down, 0);

describe("reference", () => {
  // Armitage, McPherson & Rowe (1969), Table 2, from memory: 1.96 at each of 1, 2, 3, 4, 5, 10 looks errs in .05, .083, .107, .126, .142, .193.
  it("a bound of 1.96 at each of 2, 3, 4, 5, 10 equal looks is passed in .083, .107, .126, .142, .193 of tests without difference", () => {
    for (const [count, rate] of [
      [2, 0.083],
      [3, 0.107],
      [4, 0.126],
      [5, 0.142],
      [10, 0.193],
    ] as const) {
      const fractions = Array.from({ length: count }, (_, look) => (look + 1) / count);
      expectNear(
        either(
          crossingChances(
            fractions,
            fractions.map(() => 1.959964),
            0,
          ),
        ),
        rate,
        { abs: 6e-4 },
        String(count),
      );
    }
  });
  it("a single look with a drift of 2.8 and 1.96: 1 - Phi(1.96 - 2.8) up, Phi(-1.96 - 2.8) down", () => {
    const [one] = crossingChances([1], [1.96], 2.8);
    expectNear(one?.up ?? 0, normalUpperTail(1.96 - 2.8), { rel: 1e-12 });
    expectNear(one?.down ?? 0, normalUpperTail(1.96 + 2.8), { rel: 1e-9 });
  });
});

describe("too little and bad input", () => {
  it("no look, a bound too few, a share that falls, a bound of 0 and NaN are refused", () => {
    expect(() => crossingChances([], [], 0)).toThrow("got 0 and 0");
    expect(() => crossingChances([0.5, 1], [2], 0)).toThrow("got 2 and 1");
    expect(() => crossingChances([0.5, 0.5], [2, 2], 0)).toThrow("got 0.5 after 0.5");
    expect(() => crossingChances([1], [0], 0)).toThrow("got 0");
    expect(() => crossingChances([1], [2], Number.NaN)).toThrow("drift");
  });
});

describe("invariance", () => {
  it("a drift turned round turns up and down round", () => {
    const up = crossingChances([0.3, 0.7, 1], [2.5, 2.2, 2], 1.4);
    const down = crossingChances([0.3, 0.7, 1], [2.5, 2.2, 2], -1.4);
    for (const [look, each] of up.entries()) expectNear(each.up, down[look]?.down ?? 0, { rel: 1e-9 });
  });
  it("a look without a bound changes nothing at the others", () => {
    const [first, last] = crossingChances([0.5, 1], [2.8, 2], 1);
    const looks = crossingChances(
      [0.25, 0.5, 0.75, 1],
      [Number.POSITIVE_INFINITY, 2.8, Number.POSITIVE_INFINITY, 2],
      1,
    );
    expectNear(looks[1]?.up ?? 0, first?.up ?? 1, { abs: 1e-7 });
    expectNear(looks[3]?.up ?? 0, last?.up ?? 1, { abs: 1e-7 });
    expect(looks[0]).toEqual({ up: 0, down: 0 });
  });
});

describe("calibration", () => {
  it("20000 walks with drift 2.5, bounds 2.96 and 1.97 at half and all: passed as often at each, within 4 standard errors", () => {
    const normal = seededNormals(29);
    const said = crossingChances([0.5, 1], [2.96, 1.97], 2.5);
    const runs = 20_000;
    const seen = [0, 0];
    for (let run = 0; run < runs; run++) {
      const half = 1.25 + Math.SQRT1_2 * normal();
      const all = half + 1.25 + Math.SQRT1_2 * normal();
      if (half >= 2.96 * Math.SQRT1_2) seen[0] = (seen[0] ?? 0) + 1;
      else if (half > -2.96 * Math.SQRT1_2 && all >= 1.97) seen[1] = (seen[1] ?? 0) + 1;
    }
    for (const look of [0, 1]) {
      const chance = said[look]?.up ?? 0;
      expectNear((seen[look] ?? 0) / runs, chance, { abs: monteCarloBand(chance, runs) });
    }
  });
});
