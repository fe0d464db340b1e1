import { describe, expect, it } from "vitest";
import { emptyCellSums, fillLevelSums } from "@/lib/stats/cell-sums";

it("room for three groups: three entries a column, all 0", () => {
  const sums = emptyCellSums(3);
  for (const shape of [sums.step, sums.ramp, sums.odd])
    for (const column of [shape.xx, shape.x1, shape.xy]) expect([...column]).toEqual([0, 0, 0]);
  for (const column of Object.values(sums.filter)) expect(column).toHaveLength(3);
});

describe("sums that every shape shares", () => {
  it("a belief of mean 2 and variance 4 adds 1/4, 1/2, 1 and log 4; none adds nothing", () => {
    const sums = emptyCellSums(1);
    const found = { logDeterminant: 3, oneOne: 5, oneY: 7, yy: 11 };
    fillLevelSums(sums, { mean: 2, variance: 4 }, found);
    expect([sums.oneOne, sums.oneY, sums.yy]).toEqual([5.25, 7.5, 12]);
    expect(sums.logDeterminant).toBeCloseTo(3 + Math.log(4), 14);
    fillLevelSums(sums, null, found);
    expect(sums).toMatchObject(found);
  });
});
