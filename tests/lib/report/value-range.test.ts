import { describe, expect, it } from "vitest";
import { valueRange } from "@/lib/report/value-range";

describe("the stretch of a value axis", () => {
  it("0 to 40 has a twentieth of 40 as air: −2 to 42", () =>
    expect(valueRange([40, 0, 7])).toEqual({ low: -2, high: 42 }));
  it("at least half of the unit: 1 to 3 is drawn from 0.5 to 3.5", () =>
    expect(valueRange([1, 3])).toEqual({ low: 0.5, high: 3.5 }));
  it("one value has width all the same", () => expect(valueRange([5])).toEqual({ low: 4.5, high: 5.5 }));
});
