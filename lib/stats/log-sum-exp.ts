/** log(sum(exp(terms))) without overflow; -Infinity for no terms or for terms that are all -Infinity. */
export function logSumExp(terms: ArrayLike<number>): number {
  let peak = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < terms.length; i++) peak = Math.max(peak, terms[i] as number);
  if (peak === Number.NEGATIVE_INFINITY) return peak;
  let sum = 0;
  for (let i = 0; i < terms.length; i++) sum += Math.exp((terms[i] as number) - peak);
  return peak + Math.log(sum);
}
