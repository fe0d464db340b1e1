import type { View } from "@/lib/domain/fundamental";
import { OFFSET_DISTANCE_CM, OFFSET_REJECT_CM, YAW_REJECT_HIGH } from "./camera-limits";

/** Farthest distance of the phone, cm: farther, joints get too small. Common practice, no source. */
export const FARTHEST_CM = 600;

/** Pictures a second that are enough for leans and hinges: half a frame is then a degree at most. Arithmetic from usual rates of turn. */
export const ENOUGH_PICTURES = 60;

/** A spot in the room, metres from the ball: along the target line toward the target; out from the golfer over the ball; up. */
export interface Spot {
  readonly along: number;
  readonly out: number;
  readonly up: number;
}

/**
 * Where a phone's lens stands that sees a view as the engine takes it: the usual distance away and as high as the hands.
 *
 * Face-on it stands straight out from the ball, at right angles to the target line. Down the line it stands behind the
 * hands, on the line through them that runs with the target line: the ball's own line would turn the club's by
 * atan(gap / distance).
 *
 * @param hands where the hands are at setup, metres
 * @returns the lens, metres; right- and left-handers alike, since `along` runs to the target for both
 */
export function phonePlace(view: View, hands: Spot): Spot {
  const distance = OFFSET_DISTANCE_CM / 100;
  if (view === "face-on") return { along: 0, out: distance, up: hands.up };
  return { along: hands.along - distance, out: hands.out, up: hands.up };
}

/** How far to one side the phone may stand before what leans on its place is set aside, cm at the usual distance. */
export function sidewaysLimit(view: View): number {
  return view === "face-on" ? OFFSET_DISTANCE_CM * Math.tan((YAW_REJECT_HIGH * Math.PI) / 180) : OFFSET_REJECT_CM;
}
