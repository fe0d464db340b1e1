/** What can be decided on the day on which a drill is to be measured again. */
export const DRILL_DECISIONS = ["keep", "change-drill", "change-goal", "stop"] as const;

/** What was decided on the day on which a drill was to be measured again. */
export type DrillDecision = (typeof DRILL_DECISIONS)[number];

/** A decision as it was taken. */
export interface DecisionRecord {
  readonly assignmentId: string;
  readonly decision: DrillDecision;
  readonly why: string;
  /** The day to be measured again that stood until then; null: none was set. */
  readonly remeasureWas: string | null;
  readonly day: string;
  readonly who: string;
  /** ISO instant. */
  readonly recordedAt: string;
}
