import type { Spot } from "@/lib/capture/phone-place";
import type { DrawnLine, DrawnPoint, DrawnRound, LineRole } from "./drawing-model";

/** Where the hands are at setup with a middle iron, metres from the ball: an invented golfer of 1.65 m. */
export const HANDS: Spot = { along: 0, out: -0.5, up: 0.78 };

/** The sticks on the ground, each from its end near the ball's middle line to its other end, metres. */
export const STICKS = {
  /** With the target line, just past the ball. */
  aim: [
    { along: -0.6, out: 0.22, up: 0 },
    { along: 0.6, out: 0.22, up: 0 },
  ],
  /** Straight out from there, toward a face-on phone. */
  leg: [
    { along: 0, out: 0.34, up: 0 },
    { along: 0, out: 1.54, up: 0 },
  ],
} as const satisfies Record<string, readonly [Spot, Spot]>;

const BALL: Spot = { along: 0, out: 0, up: 0.03 };
const HEAD: Spot = { along: -0.02, out: -0.5, up: 1.52 };
const HEAD_RADIUS = 0.12;
const BALL_RADIUS = 0.045;

function spot(along: number, out: number, up: number): Spot {
  return { along, out, up };
}

const NECK = spot(-0.02, -0.6, 1.36);
const LOINS = spot(0, -0.96, 0.88);

/** One leg by its side: +1 nearer the target. */
function leg(side: 1 | -1): readonly Spot[] {
  return [
    spot(0.11 * side, -0.96, 0.88),
    spot(0.19 * side, -0.76, 0.48),
    spot(0.19 * side, -0.9, 0.09),
    spot(0.22 * side, -0.66, 0.02),
  ];
}

const LEAD_SHOULDER = spot(0.19, -0.6, 1.35);
const TRAIL_SHOULDER = spot(-0.22, -0.6, 1.27);

/** The body from back to front. */
const BODY: readonly { readonly role: LineRole; readonly spots: readonly Spot[] }[] = [
  { role: "limb", spots: leg(-1) },
  { role: "limb", spots: leg(1) },
  { role: "limb", spots: [spot(-0.11, -0.96, 0.88), spot(0.11, -0.96, 0.88)] },
  { role: "limb", spots: [LOINS, NECK] },
  { role: "limb", spots: [TRAIL_SHOULDER, LEAD_SHOULDER] },
  { role: "club", spots: [HANDS, BALL] },
  { role: "limb", spots: [TRAIL_SHOULDER, HANDS] },
  { role: "limb", spots: [LEAD_SHOULDER, HANDS] },
];

/** From above only feet, shoulders, arms and club tell something. */
const FROM_ABOVE: typeof BODY = [
  ...([-1, 1] as const).map((side) => ({
    role: "foot" as const,
    spots: [spot(0.19 * side, -0.92, 0), spot(0.23 * side, -0.7, 0)],
  })),
  { role: "club", spots: [HANDS, BALL] },
  { role: "limb", spots: [TRAIL_SHOULDER, HANDS, LEAD_SHOULDER] },
  { role: "shoulders", spots: [spot(-0.16, -0.62, 1.3), spot(0.16, -0.62, 1.3)] },
];

/**
 * A right-handed golfer at setup with the ball, as a few lines.
 *
 * @param seen `above`: feet, shoulders and arms alone; `upright`: the whole body
 * @param place where a spot of the room lies in the drawing
 * @param size how long a metre at the golfer is in the drawing's unit
 */
export function golferFigure(
  seen: "above" | "upright",
  place: (spot: Spot) => DrawnPoint,
  size: number,
): { readonly lines: readonly DrawnLine[]; readonly rounds: readonly DrawnRound[] } {
  const parts = seen === "above" ? FROM_ABOVE : BODY;
  return {
    lines: parts.map(({ role, spots }) => ({ role, points: spots.map(place) })),
    rounds: [
      { role: "head", at: place(HEAD), radius: HEAD_RADIUS * size },
      { role: "ball", at: place(BALL), radius: BALL_RADIUS * size },
    ],
  };
}
