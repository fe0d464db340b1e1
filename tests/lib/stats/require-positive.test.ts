import { describe, expect, it } from "vitest";
import { requirePositive } from "@/lib/stats/require-positive";

describe("requirePositive", () => {
  it("lets the smallest and the largest double pass", () => {
    for (const value of [5e-324, 1, Number.MAX_VALUE]) expect(() => requirePositive(value, "sd")).not.toThrow();
  });

  it.each([0, -1, Number.POSITIVE_INFINITY, Number.NaN])("refuses %d by name", (value) => {
    expect(() => requirePositive(value, "sd")).toThrow(`sd must be above 0 and finite, got ${value}`);
  });
});
