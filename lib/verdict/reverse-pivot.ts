import { REVERSE_PIVOT_PARTS } from "@/lib/domain/order-of-work";
import { PRIORITY_THRESHOLDS } from "./priority-thresholds";
import type { WorkItem } from "./work-standing";

/**
 * Whether the films of one student and group of clubs show a reverse pivot: hip sway at the top above +10 % of stance width and
 * tilt kept below -5 degrees, both with all their doubt of 95 of 100. One of them alone, or one that may as well not be, is none.
 * A caution and no diagnosis; it stops nothing. Common practice, no source.
 */
export function reversePivot(items: readonly Pick<WorkItem, "fundamental" | "verdict">[]): "shown" | "not-shown" {
  const levelOf = (id: string) => items.find(({ fundamental }) => fundamental.id === id)?.verdict?.levelNow ?? null;
  const sway = levelOf(REVERSE_PIVOT_PARTS.sway);
  const tilt = levelOf(REVERSE_PIVOT_PARTS.tilt);
  const { reversePivotSway, reversePivotTilt } = PRIORITY_THRESHOLDS;
  const isShown =
    sway !== null && tilt !== null && sway.low95 > reversePivotSway.value && tilt.high95 < reversePivotTilt.value;
  return isShown ? "shown" : "not-shown";
}
