import type { View } from "./fundamental";
import type { Hand } from "./handedness";

/** A side of the picture, as whoever looks at it sees it; of the ground, as whoever stands behind the phone sees it. */
export const PICTURE_SIDES = ["left", "right"] as const;

/** A side of the picture. */
export type PictureSide = (typeof PICTURE_SIDES)[number];

/** What has a side: a stick's near end, the higher end of the stick across, the top of something upright, the phone itself. */
export type Sided = "pointingStickLean" | "acrossStickSlope" | "plumbLean" | "phone";

/** The plus side of each for a right-hander: facing the student the target lies to the right, from behind the ball does. */
const RIGHT_HANDED: Readonly<Record<View, Readonly<Record<Sided, PictureSide>>>> = {
  "face-on": { pointingStickLean: "left", acrossStickSlope: "left", plumbLean: "left", phone: "right" },
  "down-the-line": { pointingStickLean: "left", acrossStickSlope: "right", plumbLean: "right", phone: "right" },
};

/**
 * The side of the picture on which a sighting counts as plus, for a student of that hand.
 *
 * A left-hander's picture is the mirror image: every side changes.
 */
export function plusSide(view: View, what: Sided, hand: Hand): PictureSide {
  const side = RIGHT_HANDED[view][what];
  if (hand === "right") return side;
  return side === "left" ? "right" : "left";
}

/** The side on which a signed amount lies; nothing has none. */
export function sideOf(view: View, what: Sided, hand: Hand, amount: number): PictureSide | null {
  if (amount === 0) return null;
  const plus = plusSide(view, what, hand);
  if (amount > 0) return plus;
  return plus === "left" ? "right" : "left";
}
