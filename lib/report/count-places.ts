import type { Position, TrackVerdict } from "@/lib/domain/track-verdict";

/** How many tracks lie where against their bands; those without a goal or a level count nowhere. */
export function countPlaces(
  tracks: readonly { readonly verdict: Pick<TrackVerdict, "position"> }[],
): Readonly<Record<Position, number>> {
  const counts = { inside: 0, outside: 0, edge: 0 };
  for (const { verdict } of tracks) if (verdict.position !== null) counts[verdict.position] += 1;
  return counts;
}
