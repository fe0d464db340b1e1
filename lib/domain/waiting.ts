/** A stretch in which a student is left without a drill for a fundamental on purpose, so that it can be seen what comes back by itself. */
export interface Waiting {
  readonly id: string;
  readonly fundamentalId: string;
  /** `YYYY-MM-DD`; the day on which it was marked. */
  readonly fromDay: string;
  /** The last day; null: it lasts. */
  readonly untilDay: string | null;
  readonly who: string;
  /** ISO instants; null: it stands. */
  readonly recordedAt: string;
  readonly voidedAt: string | null;
}
