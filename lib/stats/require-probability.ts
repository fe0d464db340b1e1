/**
 * Refuses a number that isn't a probability strictly between 0 and 1.
 *
 * `value`: one number, no unit; `name` is what the message calls it. Returns nothing. Bad input: 0, 1, anything
 * outside and NaN throw a RangeError with the name and the offending value.
 */
export function requireProbability(value: number, name: string): void {
  if (!(value > 0 && value < 1)) throw new RangeError(`${name} must lie between 0 and 1, got ${value}`);
}
