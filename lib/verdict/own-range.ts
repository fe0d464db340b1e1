import { OWN_RANGE_THRESHOLDS } from "./own-range-thresholds";

/** Where a value lies against all that was read of the same track before. */
export type OwnRange =
  | { readonly kind: "within" }
  | { readonly kind: "outside"; readonly low: number; readonly high: number }
  | { readonly kind: "too-few"; readonly have: number; readonly need: number };

/**
 * Whether a value lies so far outside anything read before that it is worth a second look. It is for after saving alone:
 * while somebody reads, nothing may tell what was read before.
 *
 * @param earlier readings in force of the same student, fundamental and club group from other sessions, in one unit; any
 *   order, all finite
 * @param value the new reading, in the same unit
 * @returns `outside` with the least and the largest earlier reading when it lies beyond them by more than a share of
 *   their span; `too-few` when too little was read to say
 */
export function ownRange(earlier: readonly number[], value: number): OwnRange {
  const need = OWN_RANGE_THRESHOLDS.ownRangeReadings.value;
  if (earlier.length < need) return { kind: "too-few", have: earlier.length, need };
  const low = Math.min(...earlier);
  const high = Math.max(...earlier);
  const margin = OWN_RANGE_THRESHOLDS.ownRangeMargin.value * (high - low);
  return value < low - margin || value > high + margin ? { kind: "outside", low, high } : { kind: "within" };
}
