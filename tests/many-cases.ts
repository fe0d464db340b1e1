/** What shortens the long searches of a push; `npm run test:full` runs them whole. */
const SHORTER = 4;

/** Whether everything is tried, or what a push can wait for. */
export const FULL = process.env.PROOFBAND_TESTS === "full";

/** How many cases of a seeded search are tried: all of them in the full form, the first quarter of them on a push. */
export function manyCases(full: number): number {
  return FULL ? full : Math.ceil(full / SHORTER);
}
