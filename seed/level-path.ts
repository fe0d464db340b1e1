/** How a true level goes over the sessions of a season; positions are 0-based and may lie between sessions. */
export type LevelPath =
  | { readonly kind: "flat"; readonly level: number }
  /** `levels` has one entry more than `at`; level i + 1 holds from session `at[i]` on. */
  | { readonly kind: "steps"; readonly levels: readonly number[]; readonly at: readonly number[] }
  /** Straight from `from` at session `start` to `to` at session `end`, flat before and after. */
  | { readonly kind: "ramp"; readonly from: number; readonly to: number; readonly start: number; readonly end: number }
  /** `from` up to session `start`, then nearer to `to` by the factor e in every `scale` sessions. */
  | {
      readonly kind: "exponential";
      readonly from: number;
      readonly to: number;
      readonly start: number;
      readonly scale: number;
    };

/** The true level at a session. */
export function levelAt(path: LevelPath, session: number): number {
  switch (path.kind) {
    case "flat":
      return path.level;
    case "steps":
      return path.levels[path.at.filter((at) => at <= session).length] as number;
    case "ramp": {
      const share = (session - path.start) / (path.end - path.start);
      return path.from + (path.to - path.from) * Math.min(1, Math.max(0, share));
    }
    case "exponential": {
      const since = Math.max(0, session - path.start);
      return path.to + (path.from - path.to) * Math.exp(-since / path.scale);
    }
  }
}

/** A level that never moves. */
export function flat(level: number): LevelPath {
  return { kind: "flat", level };
}

/** One lasting step: `to` from session `at` on. */
export function step(from: number, to: number, at: number): LevelPath {
  return { kind: "steps", levels: [from, to], at: [at] };
}

/** A step that is lost again at session `lostAt`. */
export function relapse(from: number, to: number, at: number, back: number, lostAt: number): LevelPath {
  return { kind: "steps", levels: [from, to, back], at: [at, lostAt] };
}

/** Slower and slower toward `to` after session `start`. */
export function exponentialPath(from: number, to: number, start: number, scale: number): LevelPath {
  return { kind: "exponential", from, to, start, scale };
}

/** The first session whose level differs from that of the one before, among the first `count`; null: none differs. */
export function firstChangedSession(path: LevelPath, count: number): number | null {
  for (let session = 1; session < count; session++) {
    if (levelAt(path, session) !== levelAt(path, session - 1)) return session;
  }
  return null;
}
