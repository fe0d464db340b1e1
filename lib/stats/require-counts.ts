/**
 * Refuses a count of successes and trials that can't be one.
 *
 * `successes`, `trials`: counts. Returns nothing. Bad input: not whole, negative, or more successes than trials
 * throws a RangeError with the offending values. No trial at all passes.
 */
export function requireCounts(successes: number, trials: number): void {
  if (!Number.isInteger(trials) || trials < 0) throw new RangeError(`trials must be a whole number, got ${trials}`);
  if (!Number.isInteger(successes) || successes < 0 || successes > trials) {
    throw new RangeError(`successes must be a whole number from 0 to ${trials}, got ${successes}`);
  }
}
