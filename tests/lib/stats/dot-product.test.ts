import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dotProduct } from "@/lib/stats/dot-product";

describe("reference: by hand", () => {
  it("entries 1 to 2 of (9 1 2) with entries 0 to 1 of (3 4): 3 + 8 = 11; no entries: 0", () => {
    expect(dotProduct(Float64Array.from([9, 1, 2]), 1, Float64Array.from([3, 4]), 0, 2)).toBe(11);
    expect(dotProduct(new Float64Array(0), 0, new Float64Array(0), 0, 0)).toBe(0);
  });
});

describe("invariance", () => {
  it("whole numbers of any length give the plain sum of products", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.integer({ min: -99, max: 99 }), fc.integer({ min: -99, max: 99 }))), (pairs) => {
        const a = Float64Array.from(pairs, ([x]) => x);
        const b = Float64Array.from(pairs, ([, y]) => y);
        const plain = pairs.reduce((sum, [x, y]) => sum + x * y, 0);
        expect(dotProduct(a, 0, b, 0, pairs.length)).toBe(plain);
      }),
    );
  });
});
