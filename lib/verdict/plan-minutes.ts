import type { Fundamental } from "@/lib/domain/fundamental";
import { PLAN_THRESHOLDS } from "./plan-thresholds";

/** A fundamental that is read of so many swings. */
export interface PlannedReading {
  readonly fundamental: Pick<Fundamental, "id" | "view" | "derivedFrom">;
  readonly swings: number;
}

/**
 * Seconds of a coach that a film takes: each value, finding the stills of each swing in each view, and checking the phone
 * once a view. A difference of two fundamentals takes the reading of both; what is read for two of them is read once.
 *
 * @returns 0 where nothing is read
 */
export function planSeconds(planned: readonly PlannedReading[]): number {
  const { planReadingSeconds, planSwingSeconds, planViewSeconds } = PLAN_THRESHOLDS;
  const readings = new Map<string, number>();
  const views = new Map<string, number>();
  for (const { fundamental, swings } of planned) {
    for (const id of fundamental.derivedFrom ?? [fundamental.id])
      readings.set(id, Math.max(swings, readings.get(id) ?? 0));
    views.set(fundamental.view, Math.max(swings, views.get(fundamental.view) ?? 0));
  }
  const sum = (counts: Iterable<number>): number => [...counts].reduce((total, count) => total + count, 0);
  return (
    sum(readings.values()) * planReadingSeconds.value +
    sum(views.values()) * planSwingSeconds.value +
    views.size * planViewSeconds.value
  );
}
