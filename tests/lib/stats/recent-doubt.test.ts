import { describe, expect, it } from "vitest";
import { lookData } from "@/lib/stats/look-data";
import { posteriorComponents } from "@/lib/stats/posterior-components";
import { posteriorWeights } from "@/lib/stats/posterior-weights";
import { withRecentDoubt } from "@/lib/stats/recent-doubt";
import { madeNoise, madeSeries } from "./made-series";

const look = lookData(madeSeries([[1], [3], [2], [7], [6]]), madeNoise([{ daySd: 1 }, { daySd: 2 }], 2));
const parts = posteriorComponents(look);

describe("reference: by the layout of the components", () => {
  it("only the steps at the last two groups weigh more, in every cell", () => {
    const doubted = withRecentDoubt(look, parts, 8, 2);
    // Five groups: flat and five odd ones, then the steps at 1 to 4.
    doubted.weights.forEach((weight, i) => {
      const at = i % parts.stride;
      const factor = at === 9 ? 8 : at === 8 ? 2 : 1;
      expect(weight).toBeCloseTo(factor * (parts.weights[i] as number), 14);
    });
  });
  it("no change is less certain for it", () => {
    const before = posteriorWeights(look, parts).noChange;
    expect(posteriorWeights(look, withRecentDoubt(look, parts, 8, 2)).noChange).toBeLessThan(before);
  });
});

describe("invariance", () => {
  it("factors of 1 change nothing, and what was given stays as it was", () => {
    const kept = [...parts.weights];
    expect([...withRecentDoubt(look, parts, 1, 1).weights]).toEqual(kept);
    withRecentDoubt(look, parts, 8, 2);
    expect([...parts.weights]).toEqual(kept);
  });
});
