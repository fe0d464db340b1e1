/** Kills of each act: 10 at every push, 70 over the seven acts (TRUST D1 asks for 20), 200 before a release, by PROOFBAND_KILLS. */
export const KILLS = Number(process.env.PROOFBAND_KILLS ?? 10);

if (!Number.isInteger(KILLS) || KILLS < 10) throw new RangeError(`PROOFBAND_KILLS is a number from 10: ${KILLS}`);

/** A kill falls so long after the work began, at most. */
export const LONGEST_MS = 400;

/** So long may the kills of one act take: some seconds each on a busy machine. */
export const KILLS_TIMEOUT_MS = KILLS * 15_000;
