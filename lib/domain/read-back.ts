import type { FundamentalId } from "./fundamental";

/** A swing of an earlier film without a reading of a fundamental by the reader of its session. */
export interface ReadBackCandidate {
  readonly sessionId: string;
  readonly day: string;
  /** Who read the session: only this reader's readings of it count. */
  readonly reader: string;
  readonly swingId: number;
  readonly swing: number;
  /** Whether the session was filmed from the fundamental's side. */
  readonly filmed: "yes" | "no";
  /** As the coach typed it; null: the film can't be opened again. */
  readonly filmReference: string | null;
  /** Whether it waits in an open read-back of the same fundamental. */
  readonly waits: "yes" | "no";
}

/** A read-back: earlier films of one student read for one fundamental, in random order. */
export interface ReadBack {
  readonly id: string;
  readonly fundamentalId: string;
  readonly reader: string;
  readonly who: string;
  /** ISO instants. */
  readonly drawnAt: string;
  /** Null: open, and nothing of it is in the record. */
  readonly finishedAt: string | null;
  readonly droppedAt: string | null;
  readonly items: number;
  /** Typed so far. */
  readonly typed: number;
  /** In the record since the end. */
  readonly entered: number;
}

/** What an open read-back is handed of a swing: which film to open, and what was typed this time. Neither day nor value. */
export interface ReadBackItem {
  readonly place: number;
  readonly filmReference: string;
  readonly swing: number;
  readonly typed: string | null;
}

/** A reading in force that came of a read-back, with the hour of reading. */
export interface ReadBackReading {
  readonly sessionId: string;
  readonly swing: number;
  readonly fundamentalId: FundamentalId;
  readonly readAt: string;
}
