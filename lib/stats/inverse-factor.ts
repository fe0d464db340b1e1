/**
 * Inverse of a lower Cholesky factor: its columns are the whitened single groups.
 *
 * `factor`: `count` x `count`, row by row, no pivot 0. The result has the same layout, zeros above the diagonal.
 * Source: forward substitution; Golub & Van Loan, Matrix Computations, 4th ed., 3.1.
 */
export function inverseFactor(factor: Float64Array, count: number): Float64Array {
  const inverse = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    const row = i * count;
    const pivot = 1 / (factor[row + i] as number);
    for (let j = 0; j < i; j++) {
      const scale = (factor[row + j] as number) * pivot;
      const from = j * count;
      for (let k = 0; k <= j; k++)
        inverse[row + k] = (inverse[row + k] as number) - scale * (inverse[from + k] as number);
    }
    inverse[row + i] = pivot;
  }
  return inverse;
}
