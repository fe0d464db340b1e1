import { describe, expect, it } from "vitest";
import { POLICY } from "@/lib/verdict/policy";
import { leastWorthwhile, smallestWorthwhile } from "@/lib/verdict/worth";
import { madeTrack } from "./made-track";

describe("the smallest worthwhile change", () => {
  it("against a band: a third of its half-width, 3 against one edge, nothing without edges (common practice, no source)", () => {
    expect(leastWorthwhile({ low: 85, high: 97 })).toBe(2);
    expect([leastWorthwhile({ low: 2, high: null }), leastWorthwhile({ low: null, high: 2 })]).toEqual([3, 3]);
    expect(leastWorthwhile({ low: null, high: null })).toBeUndefined();
  });

  it("is 1.5 sds of a session mean; with a least one the larger of both in whole units; one's own as it is", () => {
    const of = (over: object, unitSd: number) => smallestWorthwhile(madeTrack(1, [0], over), unitSd, POLICY);
    expect(of({}, 1.5)).toBe(1.5 * POLICY.smallestWorthwhile);
    expect(of({ worthwhileAtLeast: 4 }, 1.5)).toBe(4);
    expect(of({ worthwhileAtLeast: 2 }, 1.5)).toBe(3);
    expect(of({ worthwhileAtLeast: 2 }, 2)).toBe(3);
    expect(of({ worthwhileAtLeast: 2, smallestWorthwhile: 2.5 }, 9)).toBe(2.5);
  });
});
