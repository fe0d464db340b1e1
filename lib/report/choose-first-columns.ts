import type { Fundamental } from "@/lib/domain/fundamental";
import { chooseInHand, type RankedTrack } from "./order-of-work";

/**
 * How many fundamentals stand first in the grid, the one in hand and its parts besides: five swings of six
 * fundamentals are read in fifteen minutes (30 readings, half a minute each). Common practice, no source.
 */
export const FIRST_COLUMNS = 6;

/** What is read from stills for a fundamental: itself, or the parts that it is the difference of. */
function stills(fundamental: Fundamental): readonly string[] {
  return fundamental.derivedFrom ?? [fundamental.id];
}

/**
 * The fundamentals that matter in the next session, as far as they are read from stills: the one in hand, then those to
 * keep (inside their band), owned ones before the others, each in the order of work. Where nothing was measured yet the
 * order of work alone decides.
 *
 * Only the choice follows from what is on file: neither why a column stands first nor any value leaves this function,
 * since readings are taken blind.
 *
 * @param fundamentals all of the academy, in the order of work
 * @param tracks of the club group in hand, in the order of work
 * @returns ids, the most pressing first; at least one where there is a fundamental
 */
export function chooseFirstColumns(
  fundamentals: readonly Fundamental[],
  tracks: readonly RankedTrack[],
): readonly string[] {
  const inHand = chooseInHand(tracks)?.track;
  const keeps = tracks.filter(({ summary }) => summary.verdict.position === "inside");
  const owned = keeps.filter(({ summary }) => summary.verdict.ownedSince !== null);
  const ordered = [...(inHand ? [inHand] : []), ...owned, ...keeps].map((track) => track.fundamental);
  const ids = [...new Set((ordered.length === 0 ? fundamentals : ordered).flatMap(stills))];
  const known = new Set(fundamentals.filter((each) => each.derivedFrom === null).map((each) => each.id as string));
  return ids.filter((id) => known.has(id)).slice(0, FIRST_COLUMNS);
}
