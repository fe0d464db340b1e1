/**
 * Step to which readings were rounded: the largest of 5, 2 and 1 that divides every one of them, else 0.
 *
 * `values`: readings in their unit, in any order; none gives 0.
 */
export function readingStep(values: readonly number[]): number {
  if (values.length === 0) return 0;
  for (const step of [5, 2, 1]) if (values.every((value) => value % step === 0)) return step;
  return 0;
}
