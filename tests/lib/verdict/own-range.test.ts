import { describe, expect, it } from "vitest";
import { ownRange } from "@/lib/verdict/own-range";
import { normal, randomFrom } from "@/seed/random";

const ten = [1, 2, 3, 4, 5, 6, 7, 8, 9, 11];

describe("ownRange", () => {
  it("asks from a quarter of the span beyond the ends on: of 1 to 11 beyond -1.5 and 13.5", () => {
    expect(ownRange(ten, 13.5)).toEqual({ kind: "within" });
    expect(ownRange(ten, 13.6)).toEqual({ kind: "outside", low: 1, high: 11 });
    expect(ownRange(ten, -1.6)).toEqual({ kind: "outside", low: 1, high: 11 });
  });

  it("says nothing after fewer than ten readings", () => {
    expect(ownRange(ten.slice(1), 99)).toEqual({ kind: "too-few", have: 9, need: 10 });
    expect(ownRange([], 0)).toEqual({ kind: "too-few", have: 0, need: 10 });
  });

  it("moves with a shift and a scale, and minds no order", () => {
    for (const value of [-1.6, 0, 13.4, 13.6]) {
      const plain = ownRange(ten, value).kind;
      expect(ownRange([...ten].reverse(), value).kind).toBe(plain);
      expect(
        ownRange(
          ten.map((each) => 3 * each - 40),
          3 * value - 40,
        ).kind,
      ).toBe(plain);
    }
  });

  it("asks for nothing in about 1 of 20 alike swings after 10 readings, 1 of 100 after 25", () => {
    const rng = randomFrom(20261126, 1);
    const asked = (have: number): number => {
      let outside = 0;
      for (let trial = 0; trial < 4000; trial++) {
        const earlier = Array.from({ length: have }, () => normal(rng));
        if (ownRange(earlier, normal(rng)).kind === "outside") outside++;
      }
      return outside / 4000;
    };
    expect(asked(10)).toBeGreaterThan(0.03);
    expect(asked(10)).toBeLessThan(0.075);
    expect(asked(25)).toBeGreaterThan(0.003);
    expect(asked(25)).toBeLessThan(0.02);
  });
});
