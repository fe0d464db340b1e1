import { describe, expect, it } from "vitest";
import { lookData } from "@/lib/stats/look-data";
import { posteriorComponents } from "@/lib/stats/posterior-components";
import { posteriorWeights } from "@/lib/stats/posterior-weights";
import { madeNoise, madeSeries } from "./made-series";

const look = lookData(madeSeries([[1], [3], [2], [7], [6]]), madeNoise([{ daySd: 1 }, { daySd: 2 }], 2));
const components = { ...posteriorComponents(look), weights: new Float64Array(26).fill(1) };
const sorted = posteriorWeights(look, components);

describe("reference: 26 components of weight 1, five groups, two cells", () => {
  it("6 of 13 of each cell are no change; cells share evenly", () => {
    expect(sorted.noChange).toBeCloseTo(6 / 13, 12);
    expect(sorted.cells).toEqual([0.5, 0.5]);
  });
  it("steps 2 and 3 take the belief of all four: 2 cells x 2; ramps 0 to 2 keep theirs: 2 cells", () => {
    expect([...sorted.steps]).toEqual([0, 0, 4, 4, 0]);
    expect([...sorted.ramps]).toEqual([2, 2, 2, 0, 0]);
  });
  it("one cell's components: changed are the last 7, claimed leave out the steps at 1 and 4", () => {
    expect([...sorted.changed.slice(0, 13)]).toEqual([0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1]);
    expect([...sorted.claimed.slice(0, 13)]).toEqual([0, 0, 0, 0, 0, 0, 0, 2, 2, 0, 1, 1, 1]);
  });
});
