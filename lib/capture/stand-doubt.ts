import type { Capture } from "@/lib/domain/session";
import { CHECKED_OFFSET_SD, CHECKED_ROLL_SD, CHECKED_YAW_SD } from "./camera-limits";
import { offsetAngle } from "./misplacement";
import { type StandDoubt, unknownStand } from "./sighted-stand";

/**
 * The doubt about yaw and roll that the answer to "how did the phone stand?" leaves, before what was seen, degrees.
 *
 * Square: what a check leaves. Off by about an amount: that amount, whichever side. Nobody looked: as unknown.
 */
export function standDoubt({ view, squareness, offBy }: Pick<Capture, "view" | "squareness" | "offBy">): StandDoubt {
  if (squareness === "unknown" || (squareness === "off" && offBy === null)) return unknownStand(view);
  const yawSd = view === "face-on" ? CHECKED_YAW_SD : CHECKED_OFFSET_SD;
  if (squareness === "square" || offBy === null) return { yawSd, rollSd: CHECKED_ROLL_SD };
  return { yawSd: Math.hypot(yawSd, view === "face-on" ? offBy : offsetAngle(offBy)), rollSd: CHECKED_ROLL_SD };
}
