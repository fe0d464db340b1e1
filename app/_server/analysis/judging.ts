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
