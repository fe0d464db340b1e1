import type { PainPlace, StudentEvent } from "./student";

/** An event as it was recorded, taken back or not. */
export type FiledEvent = StudentEvent & {
  readonly endDay: string | null;
  readonly place: PainPlace | null;
  readonly who: string;
  /** ISO instant; null: recorded before that was kept. */
  readonly recordedAt: string | null;
  /** Null: it stands. */
  readonly voidedAt: string | null;
};

/** One change of which tracks begin anew at an event: ids of fundamentals before and after it. */
export interface FiledRebaseline {
  readonly id: number;
  readonly eventId: string;
  readonly before: readonly string[];
  readonly after: readonly string[];
  readonly who: string;
  readonly why: string;
  readonly changedAt: string;
}
