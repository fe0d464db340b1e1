import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evidence } from "@/lib/stats/evidence";
import type { NoiseModel } from "@/lib/stats/noise-model";
import type { Series } from "@/lib/stats/series";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { answerOf } from "@/tests/reference/read-reference";
import { madeNoise, madeSeries, SMALL_GRID, scaledNoise, seeded, simulatedSeries, transformed } from "./made-series";

const worked = madeSeries([
  [4, 6, 5],
  [7, 5, 6],
  [10, 12, 11],
  [12, 10, 13],
  [11, 13, 12],
]);
const said = (series: Series, noise: NoiseModel) => answerOf(evidence(series, noise));
const start = startNoiseModel("start");

describe("reference: worked by hand", () => {
  it("4 6 5 / 7 5 6 / 10 12 11 / 12 10 13 / 11 13 12, shared sd 0.5, day sd 1.5: 3.92186 to 1e-4", () => {
    const one = said(worked, madeNoise([{ daySd: 1.5 }]));
    expect(Math.abs(one.logBayesFactor - 3.92186)).toBeLessThan(1e-4);
    expect(one.directionUp).toBeCloseTo(1, 10);
    expect(one.groups).toBe(5);
  });
  it("two cells are averaged above and below the line: the same cell twice says the same as once", () => {
    const twice = said(worked, madeNoise([{ weight: 0.3 }, { weight: 0.7 }]));
    expect(twice.logBayesFactor).toBeCloseTo(said(worked, madeNoise([{}])).logBayesFactor, 12);
  });
});

describe("too little and bad input", () => {
  it("0 to 3 used groups: too few, of which it takes 4", () => {
    for (let n = 0; n < 4; n++) {
      const few = { ...worked, groups: worked.groups.slice(0, n) };
      for (const noise of [start, SMALL_GRID])
        expect(evidence(few, noise)).toEqual({ kind: "too-few", have: n, need: 4 });
    }
    const unused = { ...worked, groups: worked.groups.map((group, i) => ({ ...group, used: i < 3 })) };
    expect(evidence(unused, start)).toEqual({ kind: "too-few", have: 3, need: 4 });
  });
  it("constant values, with and without replicates, shared errors and starting beliefs: finite, no direction", () => {
    for (const replicates of [1, 3])
      for (const sharedErrorSd of [0, 1])
        for (let n = 4; n <= 8; n++)
          for (const noise of [start, SMALL_GRID]) {
            const flat = madeSeries(
              Array.from({ length: n }, () => new Array<number>(replicates).fill(7)),
              sharedErrorSd,
            );
            const one = said(flat, noise);
            expect(Number.isFinite(one.logBayesFactor)).toBe(true);
            expect(one.logBayesFactor).toBeLessThan(0);
            expect(one.directionUp).toBeCloseTo(0.5, 12);
            const believed = said({ ...flat, start: { mean: 7, sd: 1 } }, noise);
            expect(Number.isFinite(believed.logBayesFactor)).toBe(true);
          }
  });
  it("a bad value throws and is named", () => {
    const bad = { ...worked, groups: worked.groups.map((group) => ({ ...group, sharedErrorSd: -0.25 })) };
    expect(() => evidence(bad, start)).toThrow("-0.25");
    expect(() => evidence(worked, madeNoise([{ daySd: Number.NaN }]))).toThrow("NaN");
  });
});

const groups = fc.array(fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 1, maxLength: 4 }), {
  minLength: 4,
  maxLength: 10,
});
const label = fc.constantFrom("a", "b", null);
const series = fc
  .tuple(groups, fc.array(fc.tuple(label, label), { minLength: 10, maxLength: 10 }), fc.boolean())
  .map(([values, labels, believed]): Series => {
    const plain = madeSeries(values, 0.8);
    return {
      ...plain,
      start: believed ? { mean: 2, sd: 3 } : null,
      groups: plain.groups.map((group, i) => ({
        ...group,
        sharedErrorLabel: labels[i]?.[0] ?? null,
        offsetLabel: labels[i]?.[1] ?? null,
      })),
    };
  });

describe("invariance", () => {
  const close = (a: number, b: number): void => {
    expect(Math.abs(a - b)).toBeLessThan(1e-6 * Math.max(1, Math.abs(a)));
  };
  it.each([
    ["adding 100", 1, 100],
    ["mirroring", -1, 0],
    ["multiplying by 25.4", 25.4, 0],
    ["dividing by 1000", 0.001, 0],
  ])("%s changes nothing (mirroring turns the direction over)", (_, factor, shift) => {
    fc.assert(
      fc.property(series, (one) => {
        for (const noise of [start, SMALL_GRID]) {
          const before = said(one, noise);
          const there = noise.kind === "start" ? noise : scaledNoise(noise, Math.abs(factor));
          const after = said(transformed(one, factor, shift), there);
          close(before.logBayesFactor, after.logBayesFactor);
          close(before.directionUp, factor < 0 ? 1 - after.directionUp : after.directionUp);
        }
      }),
      { numRuns: 40 },
    );
  });
  it("the order of replicates within a group doesn't matter", () => {
    fc.assert(
      fc.property(series, (one) => {
        const turned = { ...one, groups: one.groups.map((g) => ({ ...g, values: [...g.values].reverse() })) };
        close(said(turned, start).logBayesFactor, said(one, start).logBayesFactor);
      }),
      { numRuns: 40 },
    );
  });
  it("an unused group, whatever it holds, is as if it weren't there", () => {
    fc.assert(
      fc.property(series, fc.nat(3), (one, at) => {
        const odd = { ...(one.groups[at] as Series["groups"][0]), values: [999], used: false, offsetLabel: "z" };
        const with_ = { ...one, groups: [...one.groups.slice(0, at), odd, ...one.groups.slice(at)] };
        expect(said(with_, SMALL_GRID)).toEqual(said(one, SMALL_GRID));
      }),
      { numRuns: 40 },
    );
  });
  it("labels that tie nothing give the answer of the factor and of the filter alike", () => {
    const random = seeded(8);
    const plain = simulatedSeries({ groups: 20, level: (i) => (i < 10 ? 0 : 4) }, random);
    // An sd of 1e-12 of two tied errors sends the series down the other path without saying anything.
    const tied = {
      ...plain,
      offsetSd: 1e-12,
      groups: plain.groups.map((group, i) => ({ ...group, offsetLabel: String(i % 2) })),
    };
    close(said(tied, SMALL_GRID).logBayesFactor, said(plain, SMALL_GRID).logBayesFactor);
  });
});

describe("calibration: the season's promise, seeds kept apart", () => {
  const ever = (seasons: number, groupsEach: number, correlation: number, jump: number, seed: number): number => {
    const random = seeded(seed);
    let found = 0;
    for (let r = 0; r < seasons; r++) {
      const one = simulatedSeries(
        { groups: groupsEach, correlation, level: (i) => (i < groupsEach / 2 ? 0 : jump) },
        random,
      );
      for (let n = 4; n <= groupsEach; n++) {
        const look = said({ ...one, groups: one.groups.slice(0, n) }, SMALL_GRID);
        if (look.logBayesFactor < 3 || (look.directionUp > 0.05 && look.directionUp < 0.95)) continue;
        found++;
        break;
      }
    }
    return found / seasons;
  };
  it("flat, correlation 0.3, 200 seasons of 20 looks: 3 or more is reached in at most 6 % + 4 standard errors (6.7)", () => {
    expect(ever(200, 20, 0.3, 0, 101)).toBeLessThan(0.06 + 0.067);
  });
  it("flat, uncorrelated, 200 seasons of 20 looks: at most 3 % + 4 standard errors (4.8)", () => {
    expect(ever(200, 20, 0, 0, 102)).toBeLessThan(0.03 + 0.048);
  });
  it("a step of 3 U (U = sqrt(1.5^2 + 1 + 9/5) = 2.25) at half of 20: found in 95 % - 4 standard errors (8.7) or more", () => {
    expect(ever(100, 20, 0, 6.75, 103)).toBeGreaterThan(0.95 - 0.087);
  });
});
