import type { Strip } from "@/lib/report/chart-model";

/** A slip over three films, one of them set aside. */
export const STRIP: Strip = {
  summary: "Foot line: outside, 7.5°. Real slip, 3 sessions.",
  dots: [
    { x: 0, y: 0.5, mark: "used" },
    { x: 0.5, y: 0.8, mark: "set-aside" },
    { x: 1, y: 0.9, mark: "used" },
  ],
  levels: [{ x0: 0, x1: 0.4, y: 0.5 }],
  changes: [{ x0: 0.4, x1: 0.6, y0: 0.5, y1: 0.9, direction: "away" }],
  edges: "both",
  now: null,
};
