import { describe, expect, it } from "vitest";
import { askVideos } from "@/lib/report/ask-videos";

const front = (swings: number) => ({ view: "face-on" as const, swings });
const behind = (swings: number) => ({ view: "down-the-line" as const, swings });

describe("the videos that a family is asked for", () => {
  it("have the most swings of their own view each, in the order of the views", () => {
    expect(askVideos(["face-on", "down-the-line"], [front(5), behind(3), front(4), behind(2)])).toEqual([
      ...[front(5), behind(3)],
    ]);
    expect(askVideos(["down-the-line"], [behind(3)])).toEqual([behind(3)]);
    expect(askVideos([], [])).toEqual([]);
  });

  it("lose no swings by what isn't known any more: it counts in every view, and a view of nothing known has them all", () => {
    expect(askVideos(["face-on", "down-the-line"], [front(5), behind(3), { view: null, swings: 4 }])).toEqual([
      ...[front(5), behind(4)],
    ]);
    expect(askVideos(["face-on", "down-the-line"], [front(5)])).toEqual([front(5), behind(5)]);
  });
});
