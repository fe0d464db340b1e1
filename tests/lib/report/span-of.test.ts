import { describe, expect, it } from "vitest";
import { spanOf } from "@/lib/report/span-of";

describe("a stretch of values with air", () => {
  it("from 2 to 12 with a tenth of 10 on both sides: 1 to 13, in any order", () => {
    expect(spanOf([12, 2, 5])).toEqual({ from: 1, to: 13 });
  });
  it("one value has width all the same: 4 lies between 3 and 5", () => {
    expect(spanOf([4])).toEqual({ from: 3, to: 5 });
    expect(spanOf([-4, -4])).toEqual({ from: -5, to: -3 });
  });
});
