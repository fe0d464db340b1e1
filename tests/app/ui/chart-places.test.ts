import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FORM_SIZES, FORMS, formFor } from "@/app/_ui/chart-forms";
import { chartGeometry } from "@/app/_ui/chart-geometry";
import { placeInLane } from "@/app/_ui/chart-lane";
import { placeReasons } from "@/app/_ui/chart-reasons";
import { placeRibbons } from "@/app/_ui/chart-ribbons";
import { pixelScale } from "@/app/_ui/chart-scale";
import { PLAIN, textWidth, wrapText } from "@/app/_ui/text-width";
import { madeSeasonChart } from "./made-season-chart";

describe("captions of the story lane", () => {
  const item = fc
    .tuple(fc.integer({ min: 0, max: 1100 }), fc.integer({ min: 0, max: 200 }), fc.integer({ min: 20, max: 220 }))
    .map(([ideal, slide, width]) => ({ ideal, latest: ideal + slide, width }));

  test("never overlap within a row and never leave the lane", () => {
    fc.assert(
      fc.property(fc.array(item, { maxLength: 12 }), (items) => {
        const { places, rows } = placeInLane(items, 0, 1160, 14);
        const boxes = places.map((place, at) => ({ ...place, end: place.start + (items[at]?.width ?? 0) }));
        for (const [at, box] of boxes.entries()) {
          expect(box.start).toBeGreaterThanOrEqual(0);
          expect(box.end).toBeLessThanOrEqual(1160);
          expect(box.row).toBeLessThan(rows);
          for (const other of boxes.slice(at + 1).filter(({ row }) => row === box.row))
            expect(box.end + 14 <= other.start || other.end + 14 <= box.start).toBe(true);
        }
      }),
    );
  });

  test("stand where they like in one row when there is room: 100 and 400", () => {
    const items = [
      { ideal: 100, latest: 100, width: 80 },
      { ideal: 400, latest: 400, width: 80 },
    ];
    expect(placeInLane(items, 0, 1160, 14)).toEqual({
      places: [
        { start: 100, row: 0 },
        { start: 400, row: 0 },
      ],
      rows: 1,
    });
  });

  test("slide before they open a row: the second wants 150, may wait until 200, and starts at 100 + 80 + 14 = 194", () => {
    const second = { ideal: 150, latest: 200, width: 80 };
    expect(placeInLane([{ ideal: 100, latest: 100, width: 80 }, second], 0, 1160, 14).places[1]).toEqual({
      start: 194,
      row: 0,
    });
    expect(
      placeInLane(
        [
          { ideal: 100, latest: 100, width: 80 },
          { ...second, latest: 190 },
        ],
        0,
        1160,
        14,
      ).places[1],
    ).toEqual({ start: 150, row: 1 });
  });
});

describe("drills and events under the axis", () => {
  const x = pixelScale({ from: 0, to: 200 }, 40, 900);
  const stretch = fc
    .tuple(
      fc.integer({ min: 0, max: 200 }),
      fc.integer({ min: 0, max: 90 }),
      fc.string({ minLength: 1, maxLength: 60 }),
    )
    .map(([from, days, label]) => ({ from, to: Math.min(200, from + days), label }));

  test("neither ribbons nor their words overlap in a row", () => {
    fc.assert(
      fc.property(fc.array(stretch, { maxLength: 8 }), fc.array(stretch, { maxLength: 4 }), (drills, events) => {
        const { places } = placeRibbons(drills, events, x, 1000);
        const boxes = places.flatMap((place) => {
          const words = textWidth(place.label, PLAIN);
          const left = place.anchor === "end" ? place.labelX - words : place.labelX;
          const inside = place.labelRow === place.row && left >= place.x && left + words <= place.x + place.width;
          const ribbon = { owner: place, row: place.row, left: place.x, right: place.x + place.width };
          return inside ? [ribbon] : [ribbon, { owner: place, row: place.labelRow, left, right: left + words }];
        });
        for (const box of boxes)
          for (const other of boxes.filter(({ owner, row }) => owner !== box.owner && row === box.row))
            expect(box.right <= other.left || other.right <= box.left).toBe(true);
      }),
    );
  });

  test("a label that fits stands inside its ribbon, one that doesn't on its right", () => {
    const [long, short] = placeRibbons(
      [
        { from: 0, to: 150, label: "Wall at the hip" },
        { from: 160, to: 162, label: "Rails" },
      ],
      [],
      x,
      1000,
    ).places;
    expect(long?.labelX).toBeLessThan((long?.x ?? 0) + (long?.width ?? 0));
    expect(short?.labelX).toBeGreaterThan((short?.x ?? 0) + (short?.width ?? 0));
  });
});

describe("reasons beside sessions set aside", () => {
  const plot = { left: 0, right: 1000, top: 0, bottom: 400 };
  const wanted = { x: 500, y: 200, low: 230, high: 170, text: "phone 60 cm off the line" };

  test("stand on the left where it is free, and on the right where it is not", () => {
    expect(placeReasons([wanted], [], plot)[0]).toMatchObject({ anchor: "end", x: 484 });
    const left = { left: 300, right: 490, top: 0, bottom: 400 };
    expect(placeReasons([wanted], [left], plot)[0]).toMatchObject({ anchor: "start", x: 516 });
  });

  test("are left to the table where every place would cover a mark", () => {
    expect(placeReasons([wanted], [plot], plot)).toEqual([]);
  });
});

describe("the drawing as a whole", () => {
  test("every form keeps at least half of its width for the days", () => {
    for (const form of FORMS) {
      const { plot, width } = chartGeometry(madeSeasonChart(), form);
      expect(plot.right - plot.left).toBeGreaterThan(width / 2);
    }
  });

  test("the widest form that fits is shown, never one that would shrink its words", () => {
    expect(FORMS.map((form) => formFor(FORM_SIZES[form].width))).toEqual(FORMS);
    expect(formFor(1159)).toBe("laptop");
    expect(formFor(300)).toBe("phone");
  });

  test("a season of nothing is still a whole drawing", () => {
    const nothing = { ...madeSeasonChart(), sessions: [], levels: [], changes: [], bands: [], drills: [], events: [] };
    const { story, reasons, ribbons, height } = chartGeometry(nothing, "wide");
    expect([story, reasons, ribbons]).toEqual([[], [], []]);
    expect(height).toBe(20 + 376 + 32);
  });

  test("words break between words: no line is wider than asked unless it is one word", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1, maxLength: 12 }).filter((w) => !w.includes(" "))), (words) => {
        const lines = wrapText(words.join(" "), 120, PLAIN);
        expect(lines.join(" ")).toBe(words.join(" "));
        for (const line of lines) expect(!line.includes(" ") || textWidth(line, PLAIN) <= 120).toBe(true);
      }),
    );
  });
});
