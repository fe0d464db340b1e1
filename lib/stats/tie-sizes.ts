/**
 * How many times each different value of a list occurs.
 *
 * `values`: any length, any order. Result: counts in order of first appearance, each 1 or more, summing to the length; empty for
 * an empty list. 0 and -0 are one value. Bad input: NaN counts as one value; callers refuse it first.
 */
export function tieSizes(values: readonly number[]): number[] {
  const sizes = new Map<number, number>();
  for (const value of values) sizes.set(value, (sizes.get(value) ?? 0) + 1);
  return [...sizes.values()];
}
