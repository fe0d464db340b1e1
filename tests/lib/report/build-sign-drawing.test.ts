import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { buildSignDrawing } from "@/lib/report/build-sign-drawing";
import type { Drawing, DrawnPoint } from "@/lib/report/drawing-model";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const named = (id: string): Fundamental => BUILT_IN.find((each) => each.id === id) as Fundamental;
const own: Fundamental = { ...named("hinge"), id: "own-x", ownName: "Knee bend" };

/** Which way the arrow of plus goes: 1 to the right. */
function way(drawing: Drawing): number {
  const [from, to] = (drawing.lines.find((line) => line.role === "plus" && line.points.length === 2)?.points ??
    []) as DrawnPoint[];
  return Math.sign((to?.x ?? NaN) - (from?.x ?? NaN));
}

function told(drawing: Drawing): readonly DrawnPoint[] {
  return drawing.lines.find((line) => line.role === "told")?.points ?? [];
}

describe("the tiny drawing of plus", () => {
  it("from the front a right-hander's target is on the right: away goes left, the hands' lead goes right", () => {
    for (const id of [
      "setup-tilt",
      "top-tilt",
      "impact-tilt",
      "hip-sway",
      "head-drift",
      "hip-shift",
      "trail-v",
      "lead-v",
    ])
      expect([id, way(buildSignDrawing(words, named(id), "right"))]).toEqual([id, -1]);
    for (const id of ["shaft-lean", "ball-position"])
      expect([id, way(buildSignDrawing(words, named(id), "right"))]).toEqual([id, 1]);
  });

  it("from behind and above a right-hander's ball is on the right: bent, closed and outside go right", () => {
    for (const id of ["posture-bend", "foot-line", "shoulder-line", "shaft-line"])
      expect([id, way(buildSignDrawing(words, named(id), "right"))]).toEqual([id, 1]);
  });

  it("closed draws the lead end, at the top, farther out; outside draws the clubhead, at the bottom, farther out", () => {
    const [trail, lead] = told(buildSignDrawing(words, named("foot-line"), "right")) as [DrawnPoint, DrawnPoint];
    expect([lead.y < trail.y, lead.x > trail.x]).toEqual([true, true]);
    const [hands, head] = told(buildSignDrawing(words, named("shaft-line"), "right")) as [DrawnPoint, DrawnPoint];
    expect([head.y > hands.y, head.x > hands.x]).toEqual([true, true]);
  });

  it("a tilt away draws the top of the spine away, and a left-hander's picture is the mirror of it", () => {
    const right = told(buildSignDrawing(words, named("setup-tilt"), "right")) as [DrawnPoint, DrawnPoint];
    const left = told(buildSignDrawing(words, named("setup-tilt"), "left")) as [DrawnPoint, DrawnPoint];
    expect(right[1].x).toBeLessThan(right[0].x);
    expect(left[1].x).toBeCloseTo(-right[1].x, 12);
    for (const fundamental of BUILT_IN)
      expect([fundamental.id, way(buildSignDrawing(words, fundamental, "left"))]).toEqual([
        fundamental.id,
        -way(buildSignDrawing(words, fundamental, "right")),
      ]);
  });

  it("an academy's own fundamental gets an axis that no hand turns", () => {
    const [right, left] = (["right", "left"] as const).map((hand) => buildSignDrawing(words, own, hand));
    expect(left).toEqual(right);
    expect(told(right as Drawing)).toEqual([]);
    expect(way(right as Drawing)).toBe(1);
  });

  it("says the sign in words, and keeps every mark and the middle of its plus inside its frame", () => {
    for (const fundamental of [...BUILT_IN, own])
      for (const hand of ["right", "left"] as const) {
        const drawing = buildSignDrawing(words, fundamental, hand);
        expect(drawing.title.length).toBeGreaterThan(5);
        const { left, right, top, bottom } = drawing.frame;
        const points = [
          ...drawing.lines.flatMap((line) => line.points),
          ...drawing.labels.map((label) => label.at),
          ...drawing.rounds.flatMap(({ at, radius }) => [
            { x: at.x - radius, y: at.y - radius },
            { x: at.x + radius, y: at.y + radius },
          ]),
        ];
        for (const { x, y } of points) {
          expect([fundamental.id, x >= left && x <= right, y >= top && y <= bottom]).toEqual([
            fundamental.id,
            true,
            true,
          ]);
        }
      }
  });
});
