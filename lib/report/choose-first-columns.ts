import type { Fundamental } from "@/lib/domain/fundamental";
import { chooseWork, type RankedTrack, type WorkFacts } from "./order-of-work";

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
 * The fundamentals that matter in the next session, as far as they are read from stills: the one in hand, then, where nothing
 * is coached, what is in doubt, then those to keep (inside their band), owned ones before the others, each in the order of work. Where nothing was measured yet the
 * order of work alone decides.
 *
 * Only the choice follows from what is on file: neither why a column stands first nor any value leaves this function,
 * since readings are taken blind.
 *
 * @param fundamentals all of the academy, in the order of work
 * @param tracks of the club group in hand, in the order of work
 * @param facts what else decides of the one in hand; absent: nothing
 * @returns ids, the most pressing first; at least one where there is a fundamental
 */
export function chooseFirstColumns(
  fundamentals: readonly Fundamental[],
  tracks: readonly RankedTrack[],
  facts?: WorkFacts,
): readonly string[] {
  const { rule, inHand } = chooseWork(fundamentals, tracks, facts);
  const work = inHand ?? rule;
  const first = work?.item;
  // Where nothing is coached the next films are for what is in doubt.
  const isMeasuring = work?.standing === "doubt" || work?.standing === "unmeasured";
  const doubts = isMeasuring ? tracks.filter(({ summary }) => summary.verdict.position === "edge") : [];
  const keeps = tracks.filter(({ summary }) => summary.verdict.position === "inside");
  const owned = keeps.filter(({ summary }) => summary.verdict.ownedSince !== null);
  const ordered = [...(first ? [first] : []), ...doubts, ...owned, ...keeps].map((track) => track.fundamental);
  const ids = [...new Set((tracks.length === 0 ? fundamentals : ordered).flatMap(stills))];
  const known = new Set(fundamentals.filter((each) => each.derivedFrom === null).map((each) => each.id as string));
  return ids.filter((id) => known.has(id)).slice(0, FIRST_COLUMNS);
}
