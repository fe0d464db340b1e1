import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { posterior } from "@/lib/stats/posterior";
import { judgedSeries } from "./judged-series";
import type { Policy } from "./policy";
import { pointingOf } from "./settle-if-real";
import { type Outlook, settleOutlook } from "./settle-plan";
import type { NoiseFor } from "./track-looks";

/** Films that would answer an open track's question: with the phone as it has stood, and checked from now on. */
export interface SquarePlan {
  /** Null: more than are ever asked for. */
  readonly asItIs: number | null;
  readonly checked: number;
  /** Which question: `settle`, whatever is true; `if-real`, if the change is at least as big as it looks. */
  readonly question: "settle" | "if-real";
}

/** Up to so many times what a check leaves the phone is as good as checked. */
const AS_CHECKED = 1.25;

/**
 * How many films fewer would answer an open track's question if the phone were checked from now on: the engine's own search
 * for a plan, once with the usual camera error and once with what a check leaves of it.
 *
 * Films that are on file stay as they are: what they would have shown of a checked phone nobody can know.
 *
 * @param track as it was judged, with its starting belief
 * @param verdict that of the track
 * @returns null where nothing is asked, the phone is as good as checked, no film is saved, or no plan answers even then
 */
export function squarePlan(
  track: JudgedTrack,
  verdict: TrackVerdict,
  noiseFor: NoiseFor,
  policy: Policy,
): SquarePlan | null {
  const { usualCaptureSd } = verdict;
  const checkedSd = track.checkedCaptureSd;
  if (verdict.verdict !== "open" || verdict.notToldApart !== null) return null;
  if (usualCaptureSd === null || checkedSd === undefined || usualCaptureSd <= AS_CHECKED * checkedSd) return null;
  const judged = judgedSeries(track, policy);
  const noise = noiseFor(judged.sessions.at(-1)?.noiseModel);
  const belief = posterior(judged.series, noise);
  if (belief.kind !== "ok") return null;
  const pointing = pointingOf(verdict.evidence.noChange, verdict.evidence.directionUp);
  const outlook = (care: number): Outlook => settleOutlook(track, judged, noise, belief.value, pointing, policy, care);
  const checked = outlook(checkedSd / usualCaptureSd);
  const asItIs = outlook(1);
  const question = questionOf(verdict) ?? questionOf(checked);
  const films = question === null ? null : filmsOf(checked, question);
  if (question === null || films === null) return null;
  const usual = filmsOf(asItIs, question);
  return usual !== null && usual <= films ? null : { asItIs: usual, checked: films, question };
}

/** The question to which an outlook has an answer; the harder one first. */
function questionOf(outlook: Outlook): SquarePlan["question"] | null {
  if (filmsOf(outlook, "settle") !== null) return "settle";
  return filmsOf(outlook, "if-real") === null ? null : "if-real";
}

function filmsOf(outlook: Outlook, question: SquarePlan["question"]): number | null {
  const plan = question === "settle" ? outlook.settle : outlook.settleIfReal;
  return plan === null || "none" in plan ? null : plan.sessions;
}
