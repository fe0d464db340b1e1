const KEY = Symbol.for("proofband.judging");
const shared = globalThis as { [KEY]?: Map<string, number> };

/** Academies with a large import that is being written or judged, with how many. */
function going(): Map<string, number> {
  shared[KEY] ??= new Map();
  return shared[KEY];
}

/** Whether a large import, or the undo of one, is being written or judged, so that pages show what is judged so far. */
export function isJudging(academyId: string): boolean {
  return (going().get(academyId) ?? 0) > 0;
}

/** Says that a large import is written and judged from now on; returns what says that it is over. */
export function beginJudging(academyId: string): () => void {
  going().set(academyId, (going().get(academyId) ?? 0) + 1);
  let over = false;
  return () => {
    if (!over) going().set(academyId, (going().get(academyId) ?? 1) - 1);
    over = true;
  };
}

const BEHIND = Symbol.for("proofband.judged-behind");
const behind = globalThis as { [BEHIND]?: Set<string> };

/** Whether the disk took nothing of the last judging, so that pages show what was judged before. */
export function isBehind(academyId: string): boolean {
  return behind[BEHIND]?.has(academyId) ?? false;
}

/** Notes whether the last judging could be kept. */
export function noteJudged(academyId: string, came: "kept" | "not-kept"): void {
  behind[BEHIND] ??= new Set();
  if (came === "kept") behind[BEHIND].delete(academyId);
  else behind[BEHIND].add(academyId);
}
