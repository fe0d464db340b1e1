const KEY = Symbol.for("proofband.judging");
const shared = globalThis as { [KEY]?: Map<string, number> };

/** Academies with a large import that is being judged, with how many. */
function going(): Map<string, number> {
  shared[KEY] ??= new Map();
  return shared[KEY];
}

/** Whether a large import, or the undo of one, is being judged, so that pages show what is judged so far. */
export function isJudging(academyId: string): boolean {
  return (going().get(academyId) ?? 0) > 0;
}

/** Says that a large import is being judged, as long as the work takes. */
export async function whileJudging(academyId: string, work: () => Promise<unknown>): Promise<void> {
  going().set(academyId, (going().get(academyId) ?? 0) + 1);
  try {
    await work();
  } finally {
    going().set(academyId, (going().get(academyId) ?? 1) - 1);
  }
}
