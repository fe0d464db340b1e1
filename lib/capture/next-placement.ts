import type { Capture } from "@/lib/domain/session";
import { DISTANCE_ACCEPT_CM, UNKNOWN_YAW_SD } from "./camera-limits";
import { offsetCentimetres } from "./misplacement";
import { ENOUGH_PICTURES } from "./phone-place";
import { placeWasSeen } from "./sighted-effect";
import { sightedStand } from "./sighted-stand";
import { radians } from "./stand";
import { standDoubt } from "./stand-doubt";

/** Beyond these the phone is to be moved: degrees of yaw, cm beside the line, degrees of roll and of pitch. Common practice, no source. */
const MOVE = { yaw: 3, besideCm: 10, roll: 1.5, pitch: 5 } as const;

/** The one thing to do otherwise with the phone next time. */
export type NextPlacement =
  | { readonly kind: "farther" | "level" | "frames" | "stick" | "nothing" }
  /** `offToward`: how far off it stood, + toward the plus side of the phone (`sideOf`): face-on toward the target, down the line on the ball's side. */
  | { readonly kind: "move"; readonly centimetres: number; readonly offToward: number }
  /** Off its place by so many cm, nobody knows to which side. */
  | { readonly kind: "back"; readonly centimetres: number }
  | { readonly kind: "height"; readonly way: "lower" | "higher" };

/** What of a camera record decides. */
export type PlacedCapture = Pick<Capture, "view" | "squareness" | "offBy" | "seen">;

/**
 * The one thing to move next time, from one view's record of a film: what does most harm first.
 *
 * @returns `stick`: where it stood is so little known that a stick would tell more; `nothing`: it stood as it should
 * @throws RangeError as `sightedStand` on impossible lengths and angles
 *
 * Source: the limits of the trade's checks (common practice, no source); the geometry of `sightedStand`.
 */
export function nextPlacement(capture: PlacedCapture): NextPlacement {
  const { view, seen, squareness, offBy } = capture;
  const stand = placeWasSeen(seen) ? sightedStand(view, seen, standDoubt(capture)) : null;
  if (seen.distanceCm !== null && seen.distanceCm < DISTANCE_ACCEPT_CM) return { kind: "farther" };
  if (stand !== null) {
    const centimetres = stand.distanceCm.value * Math.tan(radians(Math.abs(stand.yaw.value)));
    const wrong = view === "face-on" ? Math.abs(stand.yaw.value) > MOVE.yaw : centimetres > MOVE.besideCm;
    if (wrong) return { kind: "move", centimetres, offToward: view === "face-on" ? stand.yaw.value : -stand.yaw.value };
    if (Math.abs(stand.roll.value) > MOVE.roll) return { kind: "level" };
    if (seen.lensHeightCm !== null && Math.abs(stand.pitch.value) > MOVE.pitch)
      return { kind: "height", way: stand.pitch.value > 0 ? "lower" : "higher" };
  } else if (squareness === "off" && offBy !== null) {
    return { kind: "back", centimetres: Math.abs(view === "face-on" ? offsetCentimetres(offBy) : offBy) };
  }
  if (seen.framesPerSecond !== null && seen.framesPerSecond < ENOUGH_PICTURES) return { kind: "frames" };
  const unsure = stand === null ? squareness === "unknown" : stand.yaw.sd > UNKNOWN_YAW_SD / 2;
  return { kind: unsure ? "stick" : "nothing" };
}
