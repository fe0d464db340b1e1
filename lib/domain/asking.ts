import { z } from "zod";
import type { ClubGroup } from "./club-group";

/** What is done about an open track's question: it is asked, given up, or a plan to settle it was taken. */
export const ASKING_STATES = ["asked", "stopped", "planned"] as const;

/** What is done about an open track's question. */
export type AskingState = (typeof ASKING_STATES)[number];

const plan = z.object({
  /** Sessions on different days. */
  sessions: z.number().int().positive(),
  swingsEach: z.number().int().positive(),
  /** Sd of the camera error that it counts on, in the unit. */
  captureSd: z.number().min(0),
  /** With which it settles the question, 0 to 1. */
  chance: z.number().min(0).max(1),
  /** Day of the last session that it rests on, `YYYY-MM-DD`. */
  after: z.string(),
  /** Signed size that it was meant for, in the unit: its chance holds if a change is at least as big. Absent: whatever is true. */
  ifReal: z.number().optional(),
});

/** A plan as it was taken: so many more sessions of so many swings. */
export type TakenPlan = Readonly<z.infer<typeof plan>>;

/**
 * A plan as it was kept.
 *
 * @throws Error where the text isn't a whole plan
 */
export function parseTakenPlan(text: string): TakenPlan {
  return plan.parse(JSON.parse(text));
}

/** One decision on a track's question. */
export interface Asking {
  readonly studentId: string;
  readonly fundamentalId: string;
  readonly clubGroup: ClubGroup;
  readonly state: AskingState;
  /** The day of the decision, `YYYY-MM-DD`. */
  readonly day: string;
  readonly who: string;
  /** Null unless `planned`. */
  readonly plan: TakenPlan | null;
}

/**
 * The decision in force on a track's question.
 *
 * @param askings oldest first, of any tracks
 * @returns null while the question is simply asked
 */
export function askingOf(
  askings: readonly Asking[],
  track: Pick<Asking, "studentId" | "fundamentalId" | "clubGroup">,
): Asking | null {
  const latest = askings.findLast(
    (row) =>
      row.studentId === track.studentId &&
      row.fundamentalId === track.fundamentalId &&
      row.clubGroup === track.clubGroup,
  );
  return latest === undefined || latest.state === "asked" ? null : latest;
}
