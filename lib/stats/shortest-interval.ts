/**
 * Shortest stretch that holds at least `share` of equally likely points.
 *
 * `sorted`: ascending, at least one; the first of equally short stretches is taken. Its ends are points.
 * Throws on no points.
 */
export function shortestInterval(
  sorted: ArrayLike<number>,
  share: number,
): { readonly low: number; readonly high: number } {
  const count = sorted.length;
  if (count === 0) throw new RangeError("an interval needs at least one point: 0");
  const held = Math.min(count, Math.max(1, Math.ceil(share * count)));
  let best = 0;
  for (let i = 1; i + held <= count; i++) {
    const width = (sorted[i + held - 1] as number) - (sorted[i] as number);
    if (width < (sorted[best + held - 1] as number) - (sorted[best] as number)) best = i;
  }
  return { low: sorted[best] as number, high: sorted[best + held - 1] as number };
}
