/** What a re-read repeats: (a) the same still with its points placed anew; (b) the same film, frame and points chosen anew. */
export const REREAD_LEVELS = ["a", "b"] as const;

/** See `REREAD_LEVELS`. */
export type RereadLevel = (typeof REREAD_LEVELS)[number];

/** One swing of one fundamental read twice, the second time without sight of the first. */
export interface RereadPair {
  readonly level: RereadLevel;
  /** Who read first, and who read again: often the same. */
  readonly firstReader: string;
  readonly reader: string;
  /** In the fundamental's unit, in its own sign. */
  readonly first: number;
  readonly again: number;
}
