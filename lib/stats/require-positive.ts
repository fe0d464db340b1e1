/**
 * Refuses a number that isn't finite and above 0.
 *
 * `value`: one number, any unit; `name` is what the message calls it. Returns nothing. Bad input: 0, a negative
 * number, infinity and NaN throw a RangeError with the name and the offending value.
 */
export function requirePositive(value: number, name: string): void {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name} must be above 0 and finite, got ${value}`);
}
