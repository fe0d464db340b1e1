import { describe, expect, it } from "vitest";
import { requireCounts } from "@/lib/stats/require-counts";

describe("requireCounts", () => {
  it("lets 0 of 0, 0 of 5 and 5 of 5 pass", () => {
    for (const [k, n] of [
      [0, 0],
      [0, 5],
      [5, 5],
    ] as const)
      expect(() => requireCounts(k, n)).not.toThrow();
  });

  it("refuses 6 of 5, half a success, and trials below 0", () => {
    expect(() => requireCounts(6, 5)).toThrow("successes must be a whole number from 0 to 5, got 6");
    expect(() => requireCounts(0.5, 5)).toThrow("got 0.5");
    expect(() => requireCounts(-1, 5)).toThrow("got -1");
    expect(() => requireCounts(0, -1)).toThrow("trials must be a whole number, got -1");
    expect(() => requireCounts(0, Number.NaN)).toThrow("got NaN");
  });
});
