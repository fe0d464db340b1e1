import { describe, expect, it } from "vitest";
import { requireFinite } from "@/lib/stats/require-finite";

describe("requireFinite", () => {
  it("lets finite numbers and an empty list pass", () => {
    expect(() => requireFinite([0, -1e300, 5e-324], "values")).not.toThrow();
    expect(() => requireFinite([], "values")).not.toThrow();
  });

  it("names the list, the place and the value that it refuses", () => {
    expect(() => requireFinite([1, Number.NaN], "y")).toThrow("y[1] must be a finite number, got NaN");
    expect(() => requireFinite([Number.NEGATIVE_INFINITY], "x")).toThrow("x[0] must be a finite number, got -Infinity");
  });
});
