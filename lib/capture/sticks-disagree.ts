import type { View } from "@/lib/domain/fundamental";
import type { CaptureSightings } from "@/lib/domain/session";
import { type StandDoubt, sightedStand } from "./sighted-stand";

/** Beyond so many sds two sightings don't agree; own choice, as for 99 of 100. */
const APART = 2.6;

/**
 * Whether the two sticks say places of the phone that can't both be so, while one side mistaken for the other would mend it.
 *
 * @param doubt before anything was seen
 * @returns false where a stick wasn't looked at
 */
export function sticksDisagree(view: View, seen: CaptureSightings, doubt: StandDoubt): boolean {
  if (seen.pointingStickLean === null || seen.acrossStickSlope === null) return false;
  const pointing = sightedStand(view, { ...seen, acrossStickSlope: null }, doubt).yaw;
  // Told by the stick across alone; a wide belief, so that its own word counts.
  const alone = (slope: number) =>
    sightedStand(
      view,
      { ...seen, pointingStickLean: null, besideHandsCm: null, acrossStickSlope: slope },
      { ...doubt, yawSd: 10 * doubt.yawSd },
    ).yaw;
  const apart = (slope: number): number => {
    const across = alone(slope);
    return Math.abs(across.value - pointing.value) / Math.hypot(across.sd, pointing.sd);
  };
  return apart(seen.acrossStickSlope) > APART && apart(-seen.acrossStickSlope) < APART;
}
