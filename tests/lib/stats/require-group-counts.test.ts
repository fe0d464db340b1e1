import { describe, expect, it } from "vitest";
import { WEAK_CORRELATION } from "@/lib/stats/group-counts";
import { requireGroupCounts } from "@/lib/stats/require-group-counts";

describe("requireGroupCounts", () => {
  it("lets no group, 0 of 1 and 5 of 5 pass, with the weak belief and with one of no correlation", () => {
    const groups = [
      { successes: 0, trials: 1 },
      { successes: 5, trials: 5 },
    ];
    expect(() => requireGroupCounts([], WEAK_CORRELATION)).not.toThrow();
    expect(() => requireGroupCounts(groups, { correlations: [0], weights: [1] })).not.toThrow();
  });

  it("refuses a group of no trial and 6 of 5", () => {
    expect(() => requireGroupCounts([{ successes: 0, trials: 0 }], WEAK_CORRELATION)).toThrow(
      "groups[0] must hold at least one trial, got none",
    );
    expect(() => requireGroupCounts([{ successes: 6, trials: 5 }], WEAK_CORRELATION)).toThrow("got 6");
  });

  it("refuses a belief of nothing, of a correlation of 1, of a weight below 0, and of weights that sum to 0.9", () => {
    expect(() => requireGroupCounts([], { correlations: [], weights: [] })).toThrow("1 or more, got 0");
    expect(() => requireGroupCounts([], { correlations: [0, 0.1], weights: [1] })).toThrow("got 1");
    expect(() => requireGroupCounts([], { correlations: [1], weights: [1] })).toThrow(
      "a correlation must be in [0, 1), got 1",
    );
    expect(() => requireGroupCounts([], { correlations: [0, 0.1], weights: [1.5, -0.5] })).toThrow("got -0.5");
    expect(() => requireGroupCounts([], { correlations: [0], weights: [0.9] })).toThrow("must sum to 1, got 0.9");
  });

  it("the weak belief is Beta(1, 4) in twelve parts: mean 0.2 to two decimals, half of it below 0.16", () => {
    const { correlations, weights } = WEAK_CORRELATION;
    const mean = correlations.reduce((sum, one, r) => sum + one * (weights[r] as number), 0);
    expect(mean).toBeCloseTo(0.2, 2);
    expect(correlations.filter((one) => one < 1 - 0.5 ** 0.25)).toHaveLength(6);
  });
});
