import type { TakenPlan } from "@/lib/domain/asking";
import type { TrackHistory } from "./track-history";

/** How far a plan has come. */
export interface PlanProgress {
  /** Days with a session as the plan asked for it. */
  readonly come: number;
  /** Days with a judged session of fewer swings, or of a camera looser than the plan counted on. */
  readonly short: number;
  readonly state: "waiting" | "followed";
}

/** A camera error counts as the plan's up to this factor: its sd is an estimate too. */
export const CAMERA_ALLOWANCE = 1.25;

/**
 * What has come of a plan that was taken: judged sessions on different days after it, with the swings and the camera
 * care that it asked for. More care than a check can't be asked for, so a checked camera always counts.
 *
 * @param history the track as on file now
 */
export function planProgress(plan: TakenPlan, history: TrackHistory): PlanProgress {
  const days = new Map<string, "as-asked" | "short">();
  const enough = Math.max(plan.captureSd * CAMERA_ALLOWANCE, history.judged.checkedCaptureSd ?? 0);
  for (const { session, swings, apart, captureSd } of history.sessions) {
    if (apart !== null || session.day <= plan.after) continue;
    const asAsked = swings.length >= plan.swingsEach && captureSd <= enough;
    if (asAsked || !days.has(session.day)) days.set(session.day, asAsked ? "as-asked" : "short");
  }
  const come = [...days.values()].filter((kind) => kind === "as-asked").length;
  return { come, short: days.size - come, state: come >= plan.sessions ? "followed" : "waiting" };
}
