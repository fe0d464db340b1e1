import { describe, expect, it } from "vitest";
import type { Edges } from "@/lib/domain/fundamental";
import { axisTicks, beyondBand, middleOf, spreadAxis } from "@/lib/report/spread-axis";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const at = (level: number, low: number | null, high: number | null) => ({ level, goal: { low, high } as Edges });

describe("the axis on which levels are drawn", () => {
  it("is one of levels where their bands are one and the same", () => {
    const axis = spreadAxis([at(80, 85, 95), at(97, 85, 95)]);
    expect(axis).toMatchObject({ kind: "same", band: { low: 85, high: 95 } });
    expect(axis.placeOf(at(80, 85, 95))).toBe(80);
    const { from, to, ticks } = axisTicks(words, axis, [80, 97]);
    expect(from).toBeLessThan(80);
    expect(to).toBeGreaterThan(97);
    expect(ticks.map(({ label }) => label)).toEqual(["80", "85", "90", "95"]);
  });

  it("else each lies at its distance from its own band, and as far across the field as across its band", () => {
    // Widths 10, 20 and 20: the field is 20 wide.
    const levels = [at(83, 85, 95), at(90, 85, 95), at(25, 10, 30), at(33, 10, 30), at(10, 10, 30)];
    const axis = spreadAxis(levels);
    expect(axis).toMatchObject({ kind: "own", band: { low: 0, high: 20 } });
    expect(levels.map(axis.placeOf)).toEqual([-2, 10, 15, 23, 0]);
    const { ticks } = axisTicks(words, axis, levels.map(axis.placeOf));
    expect(ticks).toEqual([
      { at: -2, label: "−2" },
      { at: 22, label: "+2" },
      { at: 24, label: "+4" },
    ]);
  });

  it("bands that are open on one side for all have no far edge, and nothing is cut", () => {
    const below = spreadAxis([at(3, null, 5), at(9, null, 7)]);
    expect([below.band, below.placeOf(at(3, null, 5)), below.placeOf(at(9, null, 7))]).toEqual([
      { low: null, high: 0 },
      -2,
      2,
    ]);
    const above = spreadAxis([at(3, 5, null), at(90, 7, null)]);
    expect([above.band, above.placeOf(at(90, 7, null))]).toEqual([{ low: 0, high: null }, 83]);
  });

  it("a band open on one side among others stays within the field as long as its level is inside", () => {
    const axis = spreadAxis([at(12, 10, 14), at(90, 5, null), at(-50, null, 5)]);
    expect(axis.band).toEqual({ low: 0, high: 4 });
    expect([at(90, 5, null), at(6, 5, null), at(4, 5, null)].map(axis.placeOf)).toEqual([4, 1, -1]);
    expect([at(-50, null, 5), at(4, null, 5), at(7, null, 5)].map(axis.placeOf)).toEqual([0, 3, 6]);
  });

  it("without any band it is one of levels, without edges", () => {
    expect(spreadAxis([at(3, null, null), at(4, null, null)])).toMatchObject({
      kind: "none",
      band: { low: null, high: null },
    });
  });
});

it("beyond a band is signed, and nothing between its edges or on them", () => {
  expect([at(3, 5, 8), at(5, 5, 8), at(8, 5, 8), at(10, 5, 8), at(10, null, null)].map(beyondBand)).toEqual([
    -2, 0, 0, 2, 0,
  ]);
});

it("the middle one of some numbers is the upper of two", () => {
  expect([middleOf([3]), middleOf([9, 1, 5]), middleOf([4, 1, 3, 2])]).toEqual([3, 5, 3]);
});
