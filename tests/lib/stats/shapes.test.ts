import { describe, expect, it } from "vitest";
import { oddColumn, oddRange, rampColumn, rampRange, stepColumn, stepRange } from "@/lib/stats/shapes";

describe("reference: five groups", () => {
  it("steps 2 to 3, ramps 0 to 2, odd groups 0 to 4", () => {
    expect([stepRange(5), rampRange(5), oddRange(5)]).toEqual([
      { first: 2, last: 3 },
      { first: 0, last: 2 },
      { first: 0, last: 4 },
    ]);
  });
  it("columns", () => {
    expect([...stepColumn(5, 2)]).toEqual([0, 0, 1, 1, 1]);
    expect([...rampColumn(5, 2)]).toEqual([0, 0, 0, 0.5, 1]);
    expect([...oddColumn(5, 2)]).toEqual([0, 0, 1, 0, 0]);
  });
});

describe("too little", () => {
  it("three groups hold no claimable step", () => {
    const { first, last } = stepRange(3);
    expect(last).toBeLessThan(first);
  });
});
