/**
 * The stretch of a value axis: all that is drawn, with a twentieth of it as air, at least a half of the unit.
 *
 * @param values at least one
 */
export function valueRange(values: readonly number[]): { readonly low: number; readonly high: number } {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const pad = Math.max((high - low) * 0.05, 0.5);
  return { low: low - pad, high: high + pad };
}
