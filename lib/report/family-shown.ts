import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import type { FamilyFinding } from "@/lib/words/say-family";
import { isAway } from "./away-days";
import { findingOf } from "./family-findings";
import type { LookTrack } from "./family-look-source";
import { drawnChanges } from "./said";

/** What the youngest may see, what is told first before the rest. */
const YOUNG: readonly ShownTrack["kind"][] = ["better", "good", "checking-better", "away", "open"];

/** A track with what a family is told of it. */
export interface ShownTrack extends LookTrack {
  /** `away`: it was good when it was last seen, which is too long ago to be called good as of now (SEASON.md 5). */
  readonly kind: FamilyFinding["kind"] | "away";
  /** The last day on which anything that counts was seen; null: on none, or not too long ago. */
  readonly awaySince: string | null;
}

function shownTrack(track: LookTrack, today: string): ShownTrack {
  const last = track.history.sessions.findLast(({ apart }) => apart === null)?.session.day;
  const awaySince = last !== undefined && isAway(last, today) ? last : null;
  const { kind } = findingOf(track, today);
  return { ...track, kind: kind === "good" && awaySince !== null ? "away" : kind, awaySince };
}

function slipped({ verdict }: LookTrack): "yes" | "no" {
  return drawnChanges(verdict).some(({ change, standing }) => standing === "listed" && change.verdict === "slip")
    ? "yes"
    : "no";
}

function latestTold(tracks: readonly ShownTrack[]): ShownTrack | undefined {
  const told = tracks.filter(({ verdict }) => verdict.change !== null && verdict.listed === true);
  return [...told]
    .sort((a, b) => (a.verdict.change?.provedOn ?? "").localeCompare(b.verdict.change?.provedOn ?? ""))
    .at(-1);
}

/**
 * Which fundamental is drawn large, and which as strips: the one in hand by the order of work; where none is, or nothing was
 * measured of it, the one of which a change was told last, else the first. To the youngest the two
 * that are told first, and none that would draw a slip.
 *
 * @param tracks with at least one video each, in the order of work
 * @param inHand id of the fundamental in hand; null: none is
 */
export function familyShown(
  tracks: readonly LookTrack[],
  {
    inHand,
    reader,
    today,
  }: { readonly inHand: string | null; readonly reader: "young" | "other"; readonly today: string },
): { readonly pictured: ShownTrack | null; readonly strips: readonly ShownTrack[] } {
  const all = tracks.map((track) => shownTrack(track, today));
  const shown =
    reader === "young"
      ? all
          .filter((track) => YOUNG.includes(track.kind) && slipped(track) === "no")
          .sort((a, b) => YOUNG.indexOf(a.kind) - YOUNG.indexOf(b.kind))
          .slice(0, FAMILY_THRESHOLDS.youngMost.value)
      : all;
  const pictured =
    shown.find(({ history }) => history.fundamental.id === inHand) ?? latestTold(shown) ?? shown[0] ?? null;
  return { pictured, strips: shown.filter((track) => track !== pictured) };
}
