/**
 * What a statistic says: a value, or that there is too little to say one.
 *
 * A statistic never answers NaN, null or a silent default. `have` and `need` count whatever the
 * statistic counts (groups, pairs, replicates); its doc block says which.
 */
export type Outcome<T> = { readonly kind: "ok"; readonly value: T } | TooFew;

/** Too little data: how many there are and how many it takes. */
export interface TooFew {
  readonly kind: "too-few";
  readonly have: number;
  readonly need: number;
}

/** Wraps a value as an answer. */
export function ok<T>(value: T): { readonly kind: "ok"; readonly value: T } {
  return { kind: "ok", value };
}

/** Says that there is too little: `have` of the `need` that it takes. */
export function tooFew(have: number, need: number): TooFew {
  return { kind: "too-few", have, need };
}
