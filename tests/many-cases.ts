/** What shortens the long searches of a push; `npm run test:full` runs them whole. */
const SHORTER = 4;

/** How many cases of a seeded search are tried: all of them in the full form, the first quarter of them on a push. */
export function manyCases(full: number): number {
  return process.env.PROOFBAND_TESTS === "full" ? full : Math.ceil(full / SHORTER);
}
