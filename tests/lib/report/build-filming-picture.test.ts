import { describe, expect, it } from "vitest";
import { type Lens, pictureSpot } from "@/lib/capture/picture-spot";
import { buildFilmingPicture, filmingLens } from "@/lib/report/build-filming-picture";
import type { DrawnPoint } from "@/lib/report/drawing-model";
import { HANDS, STICKS } from "@/lib/report/golfer-figure";

const said = { title: "a", description: "b" };
const TURNS = [-0.15, 0, 0.15];

function ends(stick: keyof typeof STICKS, lens: Lens): readonly [DrawnPoint, DrawnPoint] {
  return [pictureSpot(STICKS[stick][0], lens), pictureSpot(STICKS[stick][1], lens)];
}

/** Where a stick points at the height of the hands in the picture, less where the hands are; more than 0: too far right. */
function missesHands(lens: Lens): number {
  const hands = pictureSpot(HANDS, lens);
  const [near, far] = ends("aim", lens);
  return near.x + ((far.x - near.x) * (hands.y - near.y)) / (far.y - near.y) - hands.x;
}

function moved(lens: Lens, by: { readonly along?: number; readonly out?: number }): Lens {
  return { ...lens, at: { ...lens.at, along: lens.at.along + (by.along ?? 0), out: lens.at.out + (by.out ?? 0) } };
}

describe("the stick that points at the phone, from the front", () => {
  const lens = filmingLens("face-on", "right");
  it("is dead upright in the picture from the right place, wherever the phone looks", () => {
    for (const turn of TURNS) {
      const [top, bottom] = ends("leg", { ...lens, heading: lens.heading + turn });
      expect(bottom.x).toBeCloseTo(top.x, 12);
      expect(bottom.y).toBeGreaterThan(top.y);
    }
  });

  it("leans at the bottom to the side to which the phone has to go, by c / h", () => {
    for (const by of [-0.4, -0.1, 0.1, 0.4]) {
      const [top, bottom] = ends("leg", moved(lens, { along: by }));
      expect((bottom.x - top.x) / (bottom.y - top.y)).toBeCloseTo(-by / HANDS.up, 9);
    }
  });
});

describe("the stick by the ball, from behind", () => {
  const lens = filmingLens("down-the-line", "right");
  it("points at the hands from the right place, wherever the phone looks", () => {
    for (const turn of TURNS) expect(missesHands({ ...lens, heading: lens.heading + turn })).toBeCloseTo(0, 12);
  });

  it("misses them by the phone's offset, and the hands lie to the side to which the phone has to go", () => {
    for (const by of [-0.3, -0.1, 0.1, 0.3]) {
      const off = moved({ ...lens, heading: 0 }, { out: by });
      expect(missesHands(off) * -lens.at.along).toBeCloseTo(by, 9);
    }
  });
});

describe("the drawn pictures", () => {
  it("show the telling stick as the phone sees it and where it points, right and wrong", () => {
    for (const view of ["face-on", "down-the-line"] as const)
      for (const stands of ["right", "wrong"] as const) {
        const drawing = buildFilmingPicture(view, stands, said);
        const stick = drawing.lines.find((line) => line.role === "stick-told")?.points ?? [];
        const seen = ends(view === "face-on" ? "leg" : "aim", filmingLens(view, stands));
        expect(stick).toHaveLength(2);
        for (const point of seen) expect(stick).toContainEqual(point);
        for (const point of stick) {
          expect(Math.abs(point.x)).toBeLessThan(drawing.frame.right);
          expect(point.y).toBeLessThan(drawing.frame.bottom);
        }
      }
  });

  it("from the front the way of the upright stick ends at the bottom edge; from behind at the hands", () => {
    const front = buildFilmingPicture("face-on", "right", said);
    const way = front.lines.find((line) => line.role === "sight")?.points ?? [];
    expect(way[1]?.y).toBe(front.frame.bottom);
    expect(way[1]?.x).toBeCloseTo(0, 12);
    const behind = buildFilmingPicture("down-the-line", "right", said);
    const end = behind.lines.find((line) => line.role === "sight")?.points[1];
    const hands = pictureSpot(HANDS, filmingLens("down-the-line", "right"));
    expect(end?.x).toBeCloseTo(hands.x, 12);
    expect(end?.y).toBeCloseTo(hands.y, 12);
  });
});
