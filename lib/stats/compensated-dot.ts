/** 2^27 + 1: cuts a double into two halves whose products are exact. */
const SPLITTER = 134217729;

/**
 * Sum of products of two lists, as good as if it had been worked out in twice the working digits and
 * then rounded.
 *
 * `a` and `b`: equal lengths, term by term; the result's unit is the product of theirs; 0 for empty lists.
 * Bad input: different lengths throw a RangeError. Assumes magnitudes below 1e290 (no overflow on splitting)
 * and products above 1e-290.
 *
 * Source: Ogita, T., Rump, S.M. & Oishi, S. (2005). Accurate sum and dot product. SIAM Journal on
 * Scientific Computing 26, 1955-1988 (algorithm Dot2); the split is Dekker's (1971).
 */
export function compensatedDot(a: readonly number[], b: readonly number[]): number {
  if (a.length !== b.length) throw new RangeError(`lists must have equal lengths, got ${a.length} and ${b.length}`);
  let sum = 0;
  let lost = 0;
  for (let i = 0; i < a.length; i++) {
    const x = a[i] as number;
    const y = b[i] as number;
    const product = x * y;
    const next = sum + product;
    const carried = next - sum;
    lost += sum - (next - carried) + (product - carried) + productError(x, y, product);
    sum = next;
  }
  return sum + lost;
}

/** x times y minus its rounded product, exactly. */
function productError(x: number, y: number, product: number): number {
  const xHigh = SPLITTER * x - (SPLITTER * x - x);
  const yHigh = SPLITTER * y - (SPLITTER * y - y);
  const xLow = x - xHigh;
  const yLow = y - yHigh;
  return xLow * yLow - (product - xHigh * yHigh - xLow * yHigh - xHigh * yLow);
}
