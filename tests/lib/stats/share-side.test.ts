import { describe, expect, it } from "vitest";
import { shareSide } from "@/lib/stats/share-side";
import { expectNear } from "@/tests/reference/read-reference";
import { seededChances } from "./seeded-normals";

describe("reference: by hand", () => {
  it("logs of 1, 2 and 5: the log of 8, and the belief .125, .25, .625", () => {
    const { log, shares } = shareSide(Float64Array.from([1, 2, 5].map(Math.log)));
    expectNear(log, Math.log(8), { rel: 1e-15 });
    [0.125, 0.25, 0.625].forEach((share, j) => {
      expectNear(shares[j] as number, share, { rel: 1e-15 });
    });
  });
});

describe("too little and bad input", () => {
  it("no cell with a chance, or none at all, is refused", () => {
    expect(() => shareSide(Float64Array.of(Number.NEGATIVE_INFINITY))).toThrow("got NaN");
    expect(() => shareSide(new Float64Array(0))).toThrow("got 0");
  });
});

describe("invariance", () => {
  it("logs 2000 lower give a log 2000 lower and the same belief", () => {
    const one = shareSide(Float64Array.of(-1, -3, -2));
    const low = shareSide(Float64Array.of(-2001, -2003, -2002));
    expectNear(low.log, one.log - 2000, { abs: 1e-10 });
    expect([...low.shares]).toEqual([...one.shares]);
  });
});

describe("a cell far below", () => {
  it("46 logs below the best counts as 0, 44 below as e^-44", () => {
    const { shares } = shareSide(Float64Array.of(0, -46, -44));
    expect(shares[1]).toBe(0);
    expectNear(shares[2] as number, Math.exp(-44), { rel: 1e-12 });
  });
});

describe("calibration", () => {
  it("of 20,000 shares drawn evenly from four cells and kept with chance .1, .2, .3, .4, cells are kept as believed within 4 standard errors", () => {
    const chance = seededChances(211);
    const keeps = [0.1, 0.2, 0.3, 0.4];
    const kept = [0, 0, 0, 0];
    for (let run = 0; run < 20_000; run++) {
      const cell = Math.floor(4 * chance());
      if (chance() < (keeps[cell] as number)) kept[cell] = (kept[cell] as number) + 1;
    }
    const total = kept.reduce((sum, count) => sum + count, 0);
    const { shares } = shareSide(Float64Array.from(keeps.map(Math.log)));
    shares.forEach((share, cell) => {
      const error = Math.sqrt((share * (1 - share)) / total);
      expectNear((kept[cell] as number) / total, share, { abs: 4 * error });
    });
  });
});
