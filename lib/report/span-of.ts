/**
 * A stretch of values with a tenth of it as air on both sides.
 *
 * @param values at least one, in any order; equal ones give a stretch of 1 on both sides
 */
export function spanOf(values: readonly number[]): { readonly from: number; readonly to: number } {
  const least = Math.min(...values);
  const most = Math.max(...values);
  const air = most > least ? (most - least) / 10 : 1;
  return { from: least - air, to: most + air };
}
