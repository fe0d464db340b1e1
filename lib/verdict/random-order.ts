/**
 * A list in random order (Fisher and Yates): every order is as likely as any other.
 *
 * @param chance numbers from 0 to below 1
 */
export function randomOrder<T>(list: readonly T[], chance: () => number): T[] {
  const mixed = [...list];
  for (let last = mixed.length - 1; last > 0; last--) {
    const other = Math.floor(chance() * (last + 1));
    [mixed[last], mixed[other]] = [mixed[other] as T, mixed[last] as T];
  }
  return mixed;
}
