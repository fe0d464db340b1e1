/**
 * Lower Cholesky factor L of a symmetric positive definite matrix, L L' = matrix.
 *
 * `matrix`: size x size, row by row; only its lower triangle is read. The result has the same layout,
 * zeros above the diagonal. Throws with the failing pivot when the matrix isn't positive definite.
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., 4.2.
 */
export function cholesky(matrix: Float64Array, size: number): Float64Array {
  const factor = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    const rowI = i * size;
    for (let j = 0; j <= i; j++) {
      const rowJ = j * size;
      // Two running sums: the processor need not wait for one subtraction before the next.
      let even = matrix[rowI + j] as number;
      let odd = 0;
      let k = 0;
      for (; k + 1 < j; k += 2) {
        even -= (factor[rowI + k] as number) * (factor[rowJ + k] as number);
        odd -= (factor[rowI + k + 1] as number) * (factor[rowJ + k + 1] as number);
      }
      if (k < j) even -= (factor[rowI + k] as number) * (factor[rowJ + k] as number);
      const sum = even + odd;
      if (i === j) {
        if (!(sum > 0)) throw new RangeError(`a covariance must be positive definite; pivot ${i}: ${sum}`);
        factor[rowI + i] = Math.sqrt(sum);
      } else {
        factor[rowI + j] = sum / (factor[rowJ + j] as number);
      }
    }
  }
  return factor;
}
