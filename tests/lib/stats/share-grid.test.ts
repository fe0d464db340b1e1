import { describe, expect, it } from "vitest";
import { logGamma } from "@/lib/stats/log-gamma";
import { shareGrid } from "@/lib/stats/share-grid";
import { expectNear } from "@/tests/reference/read-reference";
import { seededChances } from "./seeded-normals";

const belief = { correlations: [0, 0.3], weights: [0.5, 0.5] };

describe("reference: Euler's beta integral", () => {
  it.each([
    [3, 8],
    [0, 6],
    [40, 100],
  ])("%d of %d, no correlation: the mean over equal shares is 1 / (n + 1), to 4 digits", (successes, trials) => {
    const { masses, logs } = shareGrid([{ successes, trials }], belief);
    const list = logs[0]?.[0] as Float64Array;
    const sum = masses.reduce((total, mass, j) => total + mass * Math.exp(list[j] as number), 0);
    expectNear(sum, 1 / (trials + 1), { rel: 1e-4 });
  });
});

describe("too little and bad input", () => {
  it("no group leaves the grid and no list", () => {
    const { shares, masses, logs } = shareGrid([], belief);
    expect(shares.length).toBe(masses.length);
    expect(logs).toEqual([[], []]);
  });

  it("6 of 5 is refused", () => {
    expect(() => shareGrid([{ successes: 6, trials: 5 }], belief)).toThrow("got 6");
  });
});

describe("invariance", () => {
  it("masses sum to 1, mirror each other, and are the widths between the cells' edges", () => {
    const { shares, masses } = shareGrid([], belief);
    const last = shares.length - 1;
    expectNear(
      masses.reduce((sum, mass) => sum + mass, 0),
      1,
      { rel: 1e-12 },
    );
    shares.forEach((share, j) => {
      expectNear(share + (shares[last - j] as number), 1, { rel: 1e-14 });
      const edge = (k: number) => Math.sin((k * Math.PI) / (2 * shares.length)) ** 2;
      expectNear(masses[j] as number, edge(j + 1) - edge(j), { rel: 1e-10 });
    });
  });

  it("equal counts share a list; failures for successes mirror it", () => {
    const { logs } = shareGrid(
      [
        { successes: 2, trials: 5 },
        { successes: 2, trials: 5 },
        { successes: 3, trials: 5 },
      ],
      belief,
    );
    const [first, second, third] = logs[1] as [Float64Array, Float64Array, Float64Array];
    expect(first).toBe(second);
    const last = first.length - 1;
    first.forEach((log, j) => {
      expectNear(third[last - j] as number, log, { rel: 1e-11, abs: 1e-12 });
    });
  });
});

describe("calibration", () => {
  it("40,000 drawn shares put x^3 (1 - x)^2 where the grid's sum has it, 10 B(4, 3), within 4 standard errors", () => {
    const chance = seededChances(73);
    const runs = 40_000;
    const drawn = Array.from({ length: runs }, () => {
      const x = chance();
      return 10 * x ** 3 * (1 - x) ** 2;
    });
    const mean = drawn.reduce((sum, one) => sum + one, 0) / runs;
    const sd = Math.sqrt(drawn.reduce((sum, one) => sum + (one - mean) ** 2, 0) / runs);
    const { masses, logs } = shareGrid([{ successes: 3, trials: 5 }], belief);
    const list = logs[0]?.[0] as Float64Array;
    const sum = masses.reduce((total, mass, j) => total + mass * Math.exp(list[j] as number), 0);
    expectNear(sum, 10 * Math.exp(logGamma(4) + logGamma(3) - logGamma(7)), { rel: 1e-4 }, "grid");
    expectNear(mean, sum, { abs: (4 * sd) / Math.sqrt(runs) }, "drawn");
  });
});
