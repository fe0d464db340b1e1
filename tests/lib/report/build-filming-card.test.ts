import { describe, expect, it } from "vitest";
import { OFFSET_DISTANCE_CM, OFFSET_REJECT_CM } from "@/lib/capture/camera-limits";
import { ENOUGH_PICTURES } from "@/lib/capture/phone-place";
import { VIEWS, type View } from "@/lib/domain/fundamental";
import { HANDS, type Hand } from "@/lib/domain/handedness";
import { buildFilmingCard } from "@/lib/report/build-filming-card";
import type { Drawing, LineRole } from "@/lib/report/drawing-model";
import { HANDS as GRIP } from "@/lib/report/golfer-figure";
import { mirrorDrawing } from "@/lib/report/mirror-drawing";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const card = (view: View, hand: Hand) => buildFilmingCard(words, view, hand);
const all = VIEWS.flatMap((view) => HANDS.map((hand) => ({ view, hand, model: card(view, hand) })));

/** Everything that a person reads or hears of a model. */
function textsOf(model: unknown): readonly string[] {
  if (typeof model === "string") return [model];
  if (Array.isArray(model)) return model.flatMap(textsOf);
  if (typeof model !== "object" || model === null) return [];
  const unread = ["href", "role", "anchor", "current"];
  return Object.entries(model).flatMap(([key, value]) => (unread.includes(key) ? [] : textsOf(value)));
}

function points(drawing: Drawing, role: LineRole, place = 0) {
  return drawing.lines.filter((line) => line.role === role)[place]?.points ?? [];
}

function middle(drawing: Drawing, role: LineRole) {
  const [from, to] = points(drawing, role);
  return { x: ((from?.x ?? NaN) + (to?.x ?? NaN)) / 2, y: ((from?.y ?? NaN) + (to?.y ?? NaN)) / 2 };
}

function drawingsOf({ place, picture }: ReturnType<typeof card>): readonly Drawing[] {
  return [place.plan, place.side, ...picture.figures].map((figure) => figure.drawing);
}

describe("the drawing from above", () => {
  it("from the front: the phone stands exactly on the line of the stick that leads out from the ball", () => {
    const { drawing } = card("face-on", "right").place.plan;
    const phone = middle(drawing, "phone");
    const leg = points(drawing, "stick", 1);
    const ball = drawing.rounds.find((round) => round.role === "ball")?.at;
    expect(leg.map((point) => point.x)).toEqual([0, 0]);
    expect(ball).toEqual({ x: 0, y: 0 });
    expect(phone.x).toBeCloseTo(0, 12);
    expect(phone.y).toBeCloseTo(OFFSET_DISTANCE_CM / 100, 12);
    const aim = points(drawing, "stick", 0);
    expect(aim[0]?.y).toBe(aim[1]?.y);
  });

  it("from behind: the phone stands on the hands' line, its distance counted from them, and not on the ball's", () => {
    const { drawing } = card("down-the-line", "right").place.plan;
    const phone = middle(drawing, "phone");
    expect(phone.x).toBeCloseTo(GRIP.out, 12);
    expect(phone.x).not.toBeCloseTo(0, 1);
    const distance = points(drawing, "distance");
    expect(distance[0]).toEqual({ x: GRIP.out, y: 0 });
    expect(distance[1]?.y).toBeCloseTo(phone.y, 12);
    expect(phone.y).toBeCloseTo(OFFSET_DISTANCE_CM / 100, 12);
    const aim = points(drawing, "stick", 0);
    expect(aim[0]?.x).toBe(aim[1]?.x);
  });

  it("has a tick at every big step, both ends counted: 4 steps, 5 ticks", () => {
    for (const { model } of all)
      for (const { drawing } of [model.place.plan, model.place.side]) {
        const ticks = drawing.lines.filter((line) => line.role === "distance").slice(1);
        expect(ticks).toHaveLength(OFFSET_DISTANCE_CM / 100 + 1);
      }
  });

  it("from aside the lens is as high as the hands, and the line between them runs flat", () => {
    for (const { model } of all) {
      const sight = points(model.place.side.drawing, "sight");
      expect(sight.map((point) => point.y)).toEqual([-GRIP.up, -GRIP.up]);
    }
  });

  it("holds its marks and the places of its words inside its frame", () => {
    for (const { model } of all)
      for (const drawing of [model.place.plan.drawing, model.place.side.drawing]) {
        const { left, right, top, bottom } = drawing.frame;
        const marks = [...drawing.lines.flatMap((line) => line.points), ...drawing.labels.map((label) => label.at)];
        for (const { x, y } of marks) {
          expect(x >= left && x <= right && y >= top && y <= bottom, `${x} ${y}`).toBe(true);
        }
      }
  });
});

describe("the left-hander's card", () => {
  it("is the mirror image of the right-hander's in every drawing, but for words that name a side", () => {
    for (const view of VIEWS) {
      const wordless = (drawing: Drawing) => ({ ...drawing, title: "", description: "" });
      const right = drawingsOf(card(view, "right")).map(wordless);
      const left = drawingsOf(card(view, "left")).map(wordless);
      expect(left).toEqual(right.map(mirrorDrawing));
      expect(left).not.toEqual(right);
    }
  });

  it("names the other side wherever a side is named for one hand", () => {
    const turned = (text: string) =>
      text.replace(
        /\b(left|right)\b/gi,
        (side) => ({ left: "right", right: "left", Left: "Right", Right: "Left" })[side] ?? side,
      );
    for (const view of VIEWS) {
      const [right, left] = [card(view, "right"), card(view, "left")];
      const sided = ({ place, picture }: typeof right) => [
        ...place.steps,
        place.plan.drawing.description,
        ...picture.figures.map((figure) => figure.caption),
      ];
      expect(sided(left)).toEqual(sided(right).map(turned));
      expect(sided(left)).not.toEqual(sided(right));
    }
  });

  it("facing a right-hander the target is on the right and is drawn there; a left-hander's on the left", () => {
    for (const [hand, sign] of [
      ["right", 1],
      ["left", -1],
    ] as const) {
      const model = card("face-on", hand);
      expect(model.place.steps).toContain(`Look at the golfer. The target is on your ${hand}.`);
      expect(Math.sign(points(model.place.plan.drawing, "aim")[1]?.x ?? 0)).toBe(sign);
    }
  });

  it("the wrong picture leans, or lies off the hands, to the side that its words send the phone to", () => {
    for (const hand of HANDS) {
      const leans = card("face-on", hand).picture.figures[1];
      const [near, far] = points(leans?.drawing as Drawing, "stick-told");
      const bottom = (near?.x ?? 0) < (far?.x ?? 0) ? "left" : "right";
      expect(leans?.caption).toBe(`Its bottom end leans to the ${bottom}. Move the phone ${bottom}.`);
      const misses = card("down-the-line", hand).picture.figures[1];
      const pointed = points(misses?.drawing as Drawing, "sight")[1]?.x ?? 0;
      const hands = points(misses?.drawing as Drawing, "club")[0]?.x ?? 0;
      expect(misses?.caption).toBe(`It points past the hands. Move the phone ${hands < pointed ? "left" : "right"}.`);
    }
  });
});

describe("the card's words", () => {
  it("take their numbers from the engine: distance, pictures a second, and when a view is lost", () => {
    for (const { view, model } of all) {
      const text = textsOf(model).join(" ");
      expect(text).toContain(`${OFFSET_DISTANCE_CM / 100} big steps`);
      expect(text).toContain(`${OFFSET_DISTANCE_CM / 100} m, 13 feet`);
      expect(text).toContain(`${ENOUGH_PICTURES} pictures a second or more`);
      expect(text).toContain(`off by ${view === "face-on" ? 70 : OFFSET_REJECT_CM} cm`);
    }
  });

  it("hold no word that a family shouldn't have to know", () => {
    const banned = /\b(film\w*|level\w*|bands?|settl\w*|square\w*|set-?ups?|proved|sessions?|tracks?)\b/i;
    expect(textsOf(card("face-on", "right")).length).toBeGreaterThan(40);
    for (const { model } of all) for (const text of textsOf(model)) expect(text).not.toMatch(banned);
  });

  it("come in sentences of at most 18 words", () => {
    for (const { model } of all)
      for (const sentence of textsOf(model).flatMap((text) => text.split(/[.?!](?:\s|$)/)))
        expect(sentence.split(/\s+/).filter(Boolean).length, sentence).toBeLessThanOrEqual(18);
  });

  it("say the stick at the toes both ways: feet first, and gone before the swing", () => {
    for (const { model } of all) {
      expect(model.care.items.join(" ")).toContain("Set the feet first, then lay it. Take it away before the swing.");
      expect(model.checks.items).toContain("No stick lay at the toes during the swing.");
    }
  });
});

describe("the four cards", () => {
  it("lead to one another: each offers both views and both hands, and marks its own", () => {
    const addresses = new Set(
      all.flatMap(({ model }) => model.choices.flatMap((choice) => choice.links.map((link) => link.href))),
    );
    expect(addresses.size).toBe(4);
    for (const { view, hand, model } of all) {
      const current = model.choices.map((choice) => choice.links.filter((link) => link.current === "yes"));
      expect(current.flat().map((link) => link.href)).toEqual(Array(2).fill(`/filming?view=${view}&hand=${hand}`));
      expect(current.map((links) => links.length)).toEqual([1, 1]);
    }
    expect(new Set(all.map(({ model }) => model.title)).size).toBe(4);
  });
});
