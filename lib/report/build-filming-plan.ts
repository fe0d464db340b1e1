import { phonePlace, type Spot } from "@/lib/capture/phone-place";
import type { View } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import type { Drawing, DrawnLabel, DrawnLine, DrawnPoint } from "./drawing-model";
import { golferFigure, HANDS, STICKS } from "./golfer-figure";

/** Pixels a metre: a phone's screen then holds the whole distance with its words. */
const SCALE = 84;

/** Half a tick of the distance, metres on the drawing. */
const TICK = 0.09;

/** What the plan says beside its marks. */
export interface PlanWords {
  readonly steps: string;
  readonly lengths: string;
  readonly title: string;
  readonly description: string;
}

/** Who stands by the phone stands at the foot of the drawing. */
const PLACES: Readonly<Record<View, (spot: Spot) => DrawnPoint>> = {
  "face-on": ({ along, out }) => ({ x: along, y: out }),
  "down-the-line": ({ along, out }) => ({ x: out, y: along === 0 ? 0 : -along }),
};

function line(role: DrawnLine["role"], ...points: readonly (readonly [number, number])[]): DrawnLine {
  return { role, points: points.map(([x, y]) => ({ x, y })) };
}

function label(
  role: DrawnLabel["role"],
  anchor: DrawnLabel["anchor"],
  [x, y]: readonly [number, number],
  ...lines: readonly string[]
): DrawnLabel {
  return { role, anchor, at: { x, y }, lines };
}

/** A phone on its three legs, from above. */
function phoneLines({ x, y }: DrawnPoint): readonly DrawnLine[] {
  return [
    line("stand", [x, y], [x, y + 0.34]),
    line("stand", [x, y], [x - 0.27, y - 0.17]),
    line("stand", [x, y], [x + 0.27, y - 0.17]),
    line("phone", [x - 0.15, y], [x + 0.15, y]),
  ];
}

/** A tick at each big step of a distance that runs down the drawing. */
function distanceLines(x: number, from: number, to: number): readonly DrawnLine[] {
  const steps = Math.round(to - from);
  return [
    line("distance", [x, from], [x, to]),
    ...Array.from({ length: steps + 1 }, (_, i) =>
      line("distance", [x - TICK, from + ((to - from) * i) / steps], [x + TICK, from + ((to - from) * i) / steps]),
    ),
  ];
}

function faceOn(words: Words, said: PlanWords, phone: DrawnPoint): Omit<Drawing, "title" | "description" | "scale"> {
  const beside = -0.86;
  return {
    frame: { left: -2.13, right: 2.13, top: -1.2, bottom: phone.y + 0.5 },
    lines: [
      line("aim", [0.12, 0], [1.86, 0]),
      line("aim-head", [1.82, -0.09], [2.06, 0], [1.82, 0.09]),
      line("sight", [0, 1.62], [0, phone.y - 0.14]),
      line("leader", [-0.1, 0], [beside - TICK, 0]),
      ...distanceLines(beside, 0, phone.y),
      ...phoneLines(phone),
    ],
    rounds: [],
    labels: [
      label("name", "end", [-0.42, -0.74], words.say("card.mark.golfer")),
      label("name", "end", [-0.12, -0.12], words.say("card.mark.ball")),
      label("strong", "end", [2.06, -0.2], words.say("card.mark.target")),
      label("strong", "start", [0.72, 0.4], words.say("card.mark.stick-1")),
      label("strong", "start", [0.16, 0.98], words.say("card.mark.stick-2")),
      label("name", "start", [0.16, 1.22], words.say("card.mark.stick-2.points")),
      label("distance", "end", [beside - 0.16, phone.y / 2], said.steps, said.lengths),
      label("strong", "start", [0.32, phone.y + 0.02], words.say("card.mark.phone")),
      label("name", "start", [0.32, phone.y + 0.26], words.say("card.mark.height")),
    ],
  };
}

function downTheLine(
  words: Words,
  said: PlanWords,
  phone: DrawnPoint,
): Omit<Drawing, "title" | "description" | "scale"> {
  return {
    frame: { left: -2.6, right: 1.66, top: -1.3, bottom: phone.y + 0.5 },
    lines: [
      line("aim", [0, -0.12], [0, -1.04]),
      line("aim-head", [-0.09, -1], [0, -1.24], [0.09, -1]),
      line("shunned", [0, 0.12], [0, phone.y - 0.2]),
      line("shunned", [-0.12, phone.y - 0.12], [0.12, phone.y + 0.12]),
      line("shunned", [-0.12, phone.y + 0.12], [0.12, phone.y - 0.12]),
      ...distanceLines(phone.x, 0, phone.y),
      line("leader", [HANDS.out - 0.06, 0.08], [-0.98, 0.5]),
      ...phoneLines(phone),
    ],
    rounds: [],
    labels: [
      label("name", "end", [-1.12, 0.06], words.say("card.mark.golfer")),
      label("strong", "end", [-1.02, 0.6], words.say("card.mark.hands")),
      label("name", "end", [0.12, 0.3], words.say("card.mark.ball")),
      label("strong", "start", [0.16, -1.02], words.say("card.mark.target")),
      label("strong", "start", [0.36, -0.38], words.say("card.mark.stick-1")),
      label("name", "start", [0.6, 0.3], words.say("card.mark.stick-2")),
      label("distance", "end", [phone.x - 0.2, phone.y / 2], said.steps, said.lengths),
      label("strong", "end", [phone.x - 0.34, phone.y + 0.02], words.say("card.mark.phone")),
      label("name", "end", [phone.x - 0.34, phone.y + 0.26], words.say("card.mark.height")),
      label(
        "name",
        "start",
        [0.24, phone.y - 0.06],
        words.say("card.mark.not-here"),
        words.say("card.mark.behind-ball"),
      ),
    ],
  };
}

/** A view's place of the phone from above, in metres from the ball, for a right-hander; the phone stands at the foot. */
export function buildFilmingPlan(words: Words, view: View, said: PlanWords): Drawing {
  const place = PLACES[view];
  const phone = place(phonePlace(view, HANDS));
  const figure = golferFigure("above", place, 1);
  const plan = view === "face-on" ? faceOn(words, said, phone) : downTheLine(words, said, phone);
  return {
    ...plan,
    title: said.title,
    description: said.description,
    scale: SCALE,
    lines: [
      ...plan.lines,
      ...Object.values(STICKS).map((ends): DrawnLine => ({ role: "stick", points: ends.map(place) })),
      ...figure.lines,
    ],
    rounds: figure.rounds,
  };
}
