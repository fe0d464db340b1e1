import { describe, expect, it } from "vitest";
import type { Drawing } from "@/lib/report/drawing-model";
import { mirrorDrawing } from "@/lib/report/mirror-drawing";

const drawing: Drawing = {
  title: "right",
  description: "left",
  frame: { left: -1, right: 3, top: -2, bottom: 5 },
  scale: 10,
  lines: [
    {
      role: "stick",
      points: [
        { x: 0, y: 1 },
        { x: 2, y: 4 },
      ],
    },
  ],
  rounds: [{ role: "ball", at: { x: -0.5, y: 0 }, radius: 0.1 }],
  labels: [{ role: "name", at: { x: 1, y: 1 }, anchor: "start", lines: ["right"] }],
};

describe("the mirror image of a drawing", () => {
  it("turns every x, swaps the edges and where words begin, and leaves heights and words alone", () => {
    const mirrored = mirrorDrawing(drawing);
    expect(mirrored.frame).toEqual({ left: -3, right: 1, top: -2, bottom: 5 });
    expect(mirrored.lines[0]?.points).toEqual([
      { x: 0, y: 1 },
      { x: -2, y: 4 },
    ]);
    expect(mirrored.rounds[0]?.at).toEqual({ x: 0.5, y: 0 });
    expect(mirrored.labels[0]).toEqual({ role: "name", at: { x: -1, y: 1 }, anchor: "end", lines: ["right"] });
    expect([mirrored.title, mirrored.description, mirrored.scale]).toEqual(["right", "left", 10]);
  });

  it("twice is the drawing again", () => {
    expect(mirrorDrawing(mirrorDrawing(drawing))).toEqual(drawing);
  });
});
