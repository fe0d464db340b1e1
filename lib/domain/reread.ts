import type { CalendarDay } from "./calendar-day";
import type { FundamentalId } from "./fundamental";

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

/** Where a reading that may be read again lies; what was read there is not told. */
export interface RereadPlace {
  readonly studentId: string;
  readonly sessionId: string;
  readonly swingId: number;
  readonly fundamentalId: FundamentalId;
}

/** A first reading that a draw may take. */
export interface RereadCandidate extends RereadPlace {
  /** ISO instant of the entry or of its latest correction. */
  readonly readAt: string;
  /** As the coach typed it; null: the film can't be found again. */
  readonly filmReference: string | null;
  /** Whether this reader has read it again before, at the level asked for. */
  readonly again: "yes" | "no";
}

/** One reading of a draw as it is asked for: nothing in it tells whose it is or what was read. */
export interface RereadItem {
  /** From 1, in the order of reading. */
  readonly place: number;
  readonly fundamentalId: FundamentalId;
  readonly filmReference: string;
  /** Number of the swing in its film. */
  readonly swing: number;
  /** What was typed this time; null: nothing yet. */
  readonly typed: string | null;
}

/** A draw of readings to be read again. */
export interface RereadDraw {
  readonly id: string;
  readonly reader: string;
  readonly level: RereadLevel;
  /** The draw whose readings these are, for a second reader. */
  readonly sameAs: string | null;
  readonly who: string;
  readonly day: CalendarDay;
  readonly finishedOn: CalendarDay | null;
  /** Readings asked for, and those read so far. */
  readonly items: number;
  readonly read: number;
}

/** The measured error of readers in one fundamental, in its unit; judged with from a day on. */
export interface MeasuredReaderError {
  readonly fundamentalId: string;
  /** From 1 for each fundamental. */
  readonly number: number;
  readonly fromDay: CalendarDay;
  readonly readerSd: number;
  /** Null: readers have not been compared. */
  readonly offsetSd: number | null;
  /** Pairs, and swings shared by two readers, that it was fitted to. */
  readonly pairs: number;
  readonly shared: number;
  /** Version of the numbers by which it was fitted. */
  readonly version: string;
}
