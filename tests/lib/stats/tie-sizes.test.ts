import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { tieSizes } from "@/lib/stats/tie-sizes";

describe("tieSizes", () => {
  it("counts 3, 3, 4, 4, 4, 6, 7 as 2, 3, 1, 1", () => {
    expect(tieSizes([3, 3, 4, 4, 4, 6, 7])).toEqual([2, 3, 1, 1]);
  });

  it("is empty for an empty list", () => {
    expect(tieSizes([])).toEqual([]);
  });

  it("sums to the length, whatever the list", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 5 })), (values) => {
        expect(tieSizes(values).reduce((sum, size) => sum + size, 0)).toBe(values.length);
      }),
    );
  });
});
