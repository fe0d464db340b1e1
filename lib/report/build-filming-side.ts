import { phonePlace, type Spot } from "@/lib/capture/phone-place";
import type { View } from "@/lib/domain/fundamental";
import type { Words } from "@/lib/words/catalogue";
import type { Drawing, DrawnLine, DrawnPoint } from "./drawing-model";
import { golferFigure, HANDS, STICKS } from "./golfer-figure";

/** Pixels a metre: golfer and phone side by side on a phone's screen. */
const SCALE = 58;

const TICK = 0.1;
const BELOW = 0.3;

/** How far to the right a spot lies: seen from behind the golfer, or from the ball's side. */
const ACROSS: Readonly<Record<View, (spot: Spot) => number>> = {
  "face-on": ({ out }) => out,
  "down-the-line": ({ along }) => along,
};

function line(role: DrawnLine["role"], ...points: readonly (readonly [number, number])[]): DrawnLine {
  return { role, points: points.map(([x, y]) => ({ x, y })) };
}

/** The height of the lens from aside, in metres, for a right-hander: y is 0 on the ground and grows downward. */
export function buildFilmingSide(
  words: Words,
  view: View,
  said: { readonly title: string; readonly description: string; readonly steps: string },
): Drawing {
  const place = (spot: Spot): DrawnPoint => ({ x: ACROSS[view](spot), y: spot.up === 0 ? 0 : -spot.up });
  const lens = place(phonePlace(view, HANDS));
  const hands = place(HANDS);
  // The distance is counted from the ball face-on and from the hands down the line.
  const from = view === "face-on" ? 0 : hands.x;
  const toward = Math.sign(lens.x - hands.x);
  const figure = golferFigure("upright", place, 1);
  const steps = Math.round(Math.abs(lens.x - from));
  const ends = [lens.x + 0.55 * toward, hands.x - 1.05 * toward].sort((a, b) => a - b);
  const [left = 0, right = 0] = ends;
  return {
    title: said.title,
    description: said.description,
    frame: { left: left - 0.1, right: right + 0.1, top: -1.75, bottom: 0.7 },
    scale: SCALE,
    lines: [
      line("ground", [left, 0], [right, 0]),
      ...Object.values(STICKS).map((stick): DrawnLine => ({ role: "stick", points: stick.map(place) })),
      line("sight", [hands.x + 0.12 * toward, hands.y], [lens.x - 0.1 * toward, lens.y]),
      line("distance", [from, BELOW], [lens.x, BELOW]),
      ...Array.from({ length: steps + 1 }, (_, i) => from + ((lens.x - from) * i) / steps).map((x) =>
        line("distance", [x, BELOW - TICK], [x, BELOW + TICK]),
      ),
      line("stand", [lens.x, lens.y + 0.1], [lens.x, -0.36]),
      line("stand", [lens.x - 0.24, 0], [lens.x, -0.36], [lens.x + 0.24, 0]),
      line("phone", [lens.x, lens.y - 0.08], [lens.x, lens.y + 0.2]),
      ...figure.lines,
    ],
    rounds: figure.rounds,
    labels: [
      {
        role: "strong",
        anchor: "middle",
        at: { x: (hands.x + lens.x) / 2 + 0.1 * toward, y: hands.y - 0.14 },
        lines: [words.say("card.mark.height")],
      },
      { role: "distance", anchor: "middle", at: { x: (from + lens.x) / 2, y: 0.66 }, lines: [said.steps] },
    ],
  };
}
