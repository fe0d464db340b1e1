import { describe, expect, it } from "vitest";
import { stackDots, stackLines } from "@/lib/report/spread-lanes";

const dots = (...places: readonly number[]) => places.map((at) => ({ at }));

describe("dots above one another", () => {
  it("each stands in the lowest lane in which it touches no other", () => {
    const { dots: stacked, lanes } = stackDots(dots(0, 0.5, 0.9, 1, 5), 1);
    expect(stacked.map(({ at, lane }) => [at, lane])).toEqual([
      [0, 0],
      [0.5, 1],
      [0.9, 2],
      [1, 0],
      [5, 0],
    ]);
    expect(lanes).toBe(3);
  });

  it("no two of a lane are nearer than asked, none is lost, and none moves sideways", () => {
    const places = Array.from({ length: 200 }, (_, at) => (at * 37) % 101);
    const { dots: stacked } = stackDots(dots(...places), 3);
    expect(stacked.map(({ at }) => at).sort((a, b) => a - b)).toEqual([...places].sort((a, b) => a - b));
    for (const one of stacked)
      for (const other of stacked)
        if (one !== other && one.lane === other.lane) expect(Math.abs(one.at - other.at)).toBeGreaterThanOrEqual(3);
  });

  it("many make smaller dots, of one size on every line", () => {
    const axis = { from: 0, to: 36 };
    const few = stackLines([dots(1, 1, 1), dots(2)], axis);
    expect([few.columns, few.lines.map(({ lanes }) => lanes)]).toEqual([36, [3, 1]]);
    const spread = Array.from({ length: 700 }, (_, at) => (at % 70) / 2);
    expect(stackLines([dots(...spread), dots(2)], axis).columns).toBe(72);
    const same = stackLines([Array.from({ length: 40 }, () => ({ at: 4 }))], axis);
    expect([same.columns, same.lines[0]?.lanes]).toEqual([144, 40]);
  });

  it("no line has no lane", () => {
    expect(stackLines([[]], { from: 0, to: 1 }).lines).toEqual([{ dots: [], lanes: 0 }]);
  });
});
