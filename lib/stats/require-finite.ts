/**
 * Refuses a list that holds anything but finite numbers.
 *
 * `values`: any length, any order, any unit; `name` is what the message calls the list. Returns nothing.
 * Throws a RangeError with the name, the place (0-based) and the offending value: a list that reaches
 * this far has been checked before, so NaN or infinity is a programmer's mistake. An empty list passes.
 */
export function requireFinite(values: readonly number[], name: string): void {
  values.forEach((value, index) => {
    if (!Number.isFinite(value)) throw new RangeError(`${name}[${index}] must be a finite number, got ${value}`);
  });
}
