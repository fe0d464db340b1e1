import type { Asking } from "@/lib/domain/asking";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { planProgress } from "@/lib/verdict/plan-progress";
import type { TrackHistory } from "@/lib/verdict/track-history";

/**
 * What the films of a plan that was followed leave open (SEASON.md 8): `smaller`: any change is smaller than the one that they were
 * meant for; `not-enough`: they don't tell even that. Null: no plan was, or the question is settled.
 */
export type PlanFollowed = "smaller" | "not-enough" | null;

/** What became of a plan that was taken for a track. */
export function planFollowed(
  asking: Asking | null,
  history: TrackHistory,
  { verdict, changeBelow }: Pick<TrackVerdict, "verdict" | "changeBelow">,
): PlanFollowed {
  const plan = asking?.plan ?? null;
  if (plan === null || verdict !== "open" || planProgress(plan, history).state !== "followed") return null;
  const isSmaller = plan.ifReal !== undefined && changeBelow !== null && changeBelow <= Math.abs(plan.ifReal);
  return isSmaller ? "smaller" : "not-enough";
}
