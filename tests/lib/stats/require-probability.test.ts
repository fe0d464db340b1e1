import { describe, expect, it } from "vitest";
import { requireProbability } from "@/lib/stats/require-probability";

describe("requireProbability", () => {
  it("lets 1e-300, a half and the last double below 1 pass", () => {
    for (const p of [1e-300, 0.5, 1 - 2 ** -53]) expect(() => requireProbability(p, "p")).not.toThrow();
  });

  it.each([0, 1, -0.1, 1.1, Number.NaN])("refuses %d by name", (p) => {
    expect(() => requireProbability(p, "confidence")).toThrow(`confidence must lie between 0 and 1, got ${p}`);
  });
});
