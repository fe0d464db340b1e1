/** Kills of each act: 20 at every push, 200 before a release (TRUST D1), by PROOFBAND_KILLS. */
export const KILLS = Number(process.env.PROOFBAND_KILLS ?? 20);

if (!Number.isInteger(KILLS) || KILLS < 20) throw new RangeError(`PROOFBAND_KILLS is a number from 20: ${KILLS}`);

/** A kill falls so long after the work began, at most. */
export const LONGEST_MS = 400;

/** So long may the kills of one act take: some seconds each on a busy machine. */
export const KILLS_TIMEOUT_MS = KILLS * 15_000;
