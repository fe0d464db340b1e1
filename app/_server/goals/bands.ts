import type { Database } from "@/db/client";
import { type FiledGoalBand, readGoalBands } from "@/db/read/goal-bands";
import type { GoalBand } from "@/lib/domain/goal-band";
import { markReplaced } from "@/lib/domain/replaced-bands";
import type { AcademyScope } from "@/lib/domain/scope";
import { daysHere } from "../clock";

/** Of an academy's bands those that may reach a student: everybody's, and the student's own. */
export function bandsOf<T extends GoalBand>(bands: readonly T[], studentId: string): readonly T[] {
  return bands.filter((band) => band.studentId === null || band.studentId === studentId);
}

/**
 * The bands of an academy as they decide: one that somebody dated back decides from the day on which it was entered. Those that
 * nobody is named for were built with the demo, or are from before that was kept, and decide from their own day. One that was
 * planned and replaced before it began is marked as such.
 */
export function loadBands(
  db: Database,
  scope: AcademyScope,
  { zone }: { readonly zone: string },
): readonly FiledGoalBand[] {
  const dayOf = daysHere({ zone });
  return markReplaced(readGoalBands(db, scope), dayOf).map((band) => {
    if (band.who === "") return band;
    const entered = dayOf(band.createdAt);
    return entered > band.from ? { ...band, decidesFrom: entered } : band;
  });
}
