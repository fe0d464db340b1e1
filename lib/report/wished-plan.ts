import type { JudgedTrack } from "@/lib/domain/judged-track";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { isAskable, type PlanAnswer } from "@/lib/verdict/ask-plan";
import { type AskableCare, askableCares } from "@/lib/verdict/askable-cares";
import { largestPlan } from "@/lib/verdict/cheapest-plan";
import { POLICY } from "@/lib/verdict/policy";
import { planOnOffer } from "./plan-on-offer";

/** Films that somebody asks about, as an address or a form says it. */
export interface WishedFilms {
  readonly films?: string | undefined;
  readonly swings?: string | undefined;
  readonly care?: string | undefined;
}

/** A plan that is asked about, and every care that could be. */
export interface WishedPlan {
  readonly sessions: number;
  readonly swingsEach: number;
  readonly care: AskableCare;
  readonly cares: readonly AskableCare[];
}

/** A plan that was asked about, with the engine's answer. */
export interface AnsweredPlan {
  readonly plan: WishedPlan;
  readonly answer: PlanAnswer;
}

/** Two camera errors that differ by less than this share are one. */
const SAME = 1e-9;

/**
 * The plan that is asked about: what was wished as far as it can be asked, the rest as in the plan on offer, or where none
 * is, in the largest one. Null: no question of films stands.
 */
export function wishedPlan(
  verdict: TrackVerdict,
  { checkedCaptureSd }: Pick<JudgedTrack, "checkedCaptureSd">,
  wished: WishedFilms,
): WishedPlan | null {
  const { usualCaptureSd, notToldApart } = verdict;
  if (verdict.verdict !== "open" || notToldApart !== null || usualCaptureSd === null) return null;
  const cares = askableCares(usualCaptureSd, checkedCaptureSd);
  const offered = planOnOffer(verdict);
  const start = offered ?? largestPlan(POLICY);
  const [loosest, closest] = [cares[0] as AskableCare, cares.at(-1) as AskableCare];
  const known =
    offered === null
      ? closest
      : (cares.find(({ care }) => Math.abs(care * usualCaptureSd - offered.captureSd) <= SAME * usualCaptureSd) ??
        loosest);
  const care = cares.find(({ name }) => name === wished.care) ?? known;
  const whole = (text: string | undefined): number => (/^\d{1,2}$/.test(text ?? "") ? Number(text) : Number.NaN);
  const asked = { sessions: whole(wished.films), swingsEach: whole(wished.swings), care: care.care };
  const sessions = isAskable({ ...start, sessions: asked.sessions, care: 1 }, POLICY) ? asked.sessions : start.sessions;
  const swingsEach = isAskable({ ...start, swingsEach: asked.swingsEach, care: 1 }, POLICY)
    ? asked.swingsEach
    : start.swingsEach;
  return { sessions, swingsEach, care, cares };
}
