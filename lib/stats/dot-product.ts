/**
 * Inner product of `length` entries of `a` from `fromA` on and of `b` from `fromB` on.
 *
 * Four running sums, so that the processor need not wait for one addition before the next.
 */
export function dotProduct(a: Float64Array, fromA: number, b: Float64Array, fromB: number, length: number): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let i = 0;
  for (; i + 3 < length; i += 4) {
    s0 += (a[fromA + i] as number) * (b[fromB + i] as number);
    s1 += (a[fromA + i + 1] as number) * (b[fromB + i + 1] as number);
    s2 += (a[fromA + i + 2] as number) * (b[fromB + i + 2] as number);
    s3 += (a[fromA + i + 3] as number) * (b[fromB + i + 3] as number);
  }
  for (; i < length; i++) s0 += (a[fromA + i] as number) * (b[fromB + i] as number);
  return s0 + s1 + (s2 + s3);
}
