import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { huberCentre } from "@/lib/stats/huber-centre";

const values = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 1, maxLength: 9 });

describe("reference: the equation that defines it, solved by hand", () => {
  it("10 12 13 at reach 1.5: (12 - c) + (13 - c) - 1.5 = 0 gives 11.75", () => {
    expect(huberCentre([10, 12, 13], 1.5)).toBeCloseTo(11.75, 3);
  });
  it("a value 1000 away counts as one at the reach: 0 1 2 1000 at reach 2 gives (0 + 1 + 2 + 2) / 3", () => {
    expect(huberCentre([0, 1, 2, 1000], 2)).toBeCloseTo(5 / 3, 2);
  });
  it("a reach beyond all values is the mean: 1 2 6 gives 3", () => {
    expect(huberCentre([1, 2, 6], 50)).toBeCloseTo(3, 12);
  });
});

describe("too little and bad input", () => {
  it("one value is itself, two are their mean, a reach of 0 is the mean", () => {
    expect([huberCentre([7], 1), huberCentre([1, 9], 1), huberCentre([0, 1, 8], 0)]).toEqual([7, 5, 3]);
  });
  it("no value throws", () => {
    expect(() => huberCentre([], 1)).toThrow("0");
  });
});

describe("invariance", () => {
  it("order doesn't matter", () => {
    fc.assert(
      fc.property(values, (list) => {
        expect(huberCentre([...list].reverse(), 3)).toBe(huberCentre(list, 3));
      }),
    );
  });
  it("shifting and scaling move it along", () => {
    fc.assert(
      fc.property(values, (list) => {
        const moved = huberCentre(
          list.map((value) => 2 * value + 5),
          6,
        );
        expect(moved).toBeCloseTo(2 * huberCentre(list, 3) + 5, 8);
      }),
    );
  });
  it("it lies between the least and the largest value", () => {
    fc.assert(
      fc.property(values, (list) => {
        const centre = huberCentre(list, 3);
        expect(centre).toBeGreaterThanOrEqual(Math.min(...list) - 1e-9);
        expect(centre).toBeLessThanOrEqual(Math.max(...list) + 1e-9);
      }),
    );
  });
});

describe("calibration", () => {
  it("one value moved from 5 to 5000 moves the centre by nothing", () => {
    expect(huberCentre([0, 0.5, 1, 5000], 1.5)).toBeCloseTo(huberCentre([0, 0.5, 1, 5], 1.5), 2);
  });
});
