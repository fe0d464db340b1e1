import type { DrillAssignment } from "./student";

/** A drill as it was given, taken back or not. */
export type AssignmentRecord = DrillAssignment & {
  readonly drillId: string;
  readonly who: string;
  /** ISO instant; null: given before that was kept. */
  readonly recordedAt: string | null;
  /** Why it was stopped; null: it runs, or nobody said. */
  readonly endWhy: string | null;
  readonly state: "stands" | "taken-back";
};
