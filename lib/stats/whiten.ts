import { dotProduct } from "./dot-product";

/**
 * Whitens a column: solves L z = column, so that z has unit covariance where the column has L L'.
 *
 * `factor`: lower Cholesky factor, size x size, row by row; `column`: `size` entries. The result has
 * `size` entries; inner products of whitened columns are x' C^-1 z.
 */
export function whiten(factor: Float64Array, column: ArrayLike<number>, size: number): Float64Array {
  const white = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const row = i * size;
    white[i] = ((column[i] as number) - dotProduct(factor, row, white, 0, i)) / (factor[row + i] as number);
  }
  return white;
}
