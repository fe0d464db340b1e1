/** Of a normal error, the half of what holds 95 of 100 over the sd: what somebody types as ± is taken for that half. */
export const HALF_OF_SD = 1.96;

/** Half of what holds 95 of 100, as a form shows it: at most two digits behind the point. */
export function shownHalf(sd: number): string {
  return String(Math.round(HALF_OF_SD * sd * 100) / 100);
}
