import { phonePlace, type Spot } from "@/lib/capture/phone-place";
import { type Lens, pictureSpot } from "@/lib/capture/picture-spot";
import type { View } from "@/lib/domain/fundamental";
import type { Drawing, DrawnLine, DrawnPoint } from "./drawing-model";
import { golferFigure, HANDS, STICKS } from "./golfer-figure";

/** Pixels of a tangent of 1. */
const SCALE = 400;

/** Half the picture across, and from its middle to its upper and lower edge, in tangents: the part that tells. */
const HALF_WIDE = 0.22;
const UPPER = 0.24;
const LOWER = 0.39;

/** Between feet and ball: there the phone is turned. */
const MIDDLE: Spot = { along: 0, out: -0.42, up: 0 };

/** How far the phone stands from its place in the drawing of a wrong one, m: toward the target, or behind the ball. */
const WRONG_BY: Readonly<Record<View, { readonly along: number; readonly out: number }>> = {
  "face-on": { along: 0.7, out: 0 },
  "down-the-line": { along: 0, out: -HANDS.out },
};

/** The lens in its right place, or beside it; turned to the golfer either way. */
export function filmingLens(view: View, stands: "right" | "wrong"): Lens {
  const right = phonePlace(view, HANDS);
  const by = stands === "right" ? { along: 0, out: 0 } : WRONG_BY[view];
  const at = { ...right, along: right.along + by.along, out: right.out + by.out };
  return { at, heading: Math.atan2(MIDDLE.out - at.out, MIDDLE.along - at.along) };
}

/** The point at which the way from one point through another meets a height. */
function runOn(from: DrawnPoint, through: DrawnPoint, y: number): DrawnPoint {
  const share = (y - from.y) / (through.y - from.y);
  return { x: from.x + share * (through.x - from.x), y };
}

/**
 * What the phone shows of a right-hander, in tangents from the picture's middle, and where the stick that tells points.
 *
 * Face-on the stick that points at the phone runs straight down exactly when the lens stands over its line, wherever the
 * phone looks. Down the line the stick along the target line runs to the point straight ahead of the lens, which is where
 * the hands are exactly when the phone stands behind them and as high.
 */
export function buildFilmingPicture(
  view: View,
  stands: "right" | "wrong",
  said: { readonly title: string; readonly description: string },
): Drawing {
  const lens = filmingLens(view, stands);
  const place = (spot: Spot): DrawnPoint => pictureSpot(spot, lens);
  const figure = golferFigure("upright", place, 1 / Math.hypot(lens.at.along - MIDDLE.along, lens.at.out - MIDDLE.out));
  const [told, other] = view === "face-on" ? [STICKS.leg, STICKS.aim] : [STICKS.aim, STICKS.leg];
  const [near, far] = view === "face-on" ? [told[1], told[0]] : told;
  const pointing =
    view === "face-on"
      ? [place(near), runOn(place(far), place(near), LOWER)]
      : [place(far), runOn(place(near), place(far), place(HANDS).y)];
  const lines: DrawnLine[] = [
    { role: "stick", points: other.map(place) },
    ...figure.lines,
    { role: "sight", points: pointing },
    { role: "stick-told", points: [place(near), place(far)] },
  ];
  return {
    ...said,
    frame: { left: -HALF_WIDE, right: HALF_WIDE, top: -UPPER, bottom: LOWER },
    scale: SCALE,
    lines,
    rounds: figure.rounds,
    labels: [],
  };
}
