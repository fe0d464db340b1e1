import type { ConditionalPlan, SettlePlan, TrackVerdict } from "@/lib/domain/track-verdict";

/** A plan that settles the question whatever is true, or one that proves the change pointed to, if that is real. */
export type OfferedPlan =
  | Exclude<SettlePlan, { readonly none: string }>
  | Exclude<ConditionalPlan, { readonly none: string }>;

/** The plan that is offered for an open track: one without an if before one with; null: there is none. */
export function offeredPlan({
  settle,
  settleIfReal,
}: Pick<TrackVerdict, "settle" | "settleIfReal">): OfferedPlan | null {
  if (settle !== null && !("none" in settle)) return settle;
  return settleIfReal !== null && !("none" in settleIfReal) ? settleIfReal : null;
}
