import { inverseFactor } from "./inverse-factor";

/** Steps at every group, whitened. */
export interface WhitenedSteps {
  /** Row k: the step that is 1 from group k on, `count` entries, 0 before entry k. */
  readonly columns: Float64Array;
  /** Inner products of every two of them, `count` x `count`, entry (j, k) for j <= k. */
  readonly products: Float64Array;
}

/**
 * Steps whitened by a lower Cholesky factor, and their inner products.
 *
 * `factor`: `count` x `count`, row by row. The inverse of the factor holds the whitened single groups as its columns, and a
 * step is the sum of those from its start on. Cost grows with the cube of the groups.
 */
export function whitenedSteps(factor: Float64Array, count: number): WhitenedSteps {
  const inverse = inverseFactor(factor, count);
  const columns = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    const row = i * count;
    let stepped = 0;
    for (let k = i; k >= 0; k--) {
      stepped += inverse[row + k] as number;
      columns[k * count + i] = stepped;
    }
  }
  const products = new Float64Array(count * count);
  for (let j = 0; j < count; j++) {
    for (let k = j; k < count; k++) {
      let product = 0;
      for (let i = k; i < count; i++)
        product += (columns[j * count + i] as number) * (columns[k * count + i] as number);
      products[j * count + k] = product;
    }
  }
  return { columns, products };
}
