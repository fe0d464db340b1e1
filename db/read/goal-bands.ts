import { asc, eq } from "drizzle-orm";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { FundamentalId } from "@/lib/domain/fundamental";
import type { GoalBand, RecordedBand } from "@/lib/domain/goal-band";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { goalBand } from "../schema-work";
import { isVisible } from "./visible";

/** A goal band on file. */
export type FiledGoalBand = RecordedBand;

/** Of some bands those that a viewer may know: a band of one student's is about that student. */
export function visibleBands<T extends Pick<GoalBand, "studentId">>(scope: AcademyScope, bands: readonly T[]): T[] {
  return bands.filter(({ studentId }) => studentId === null || isVisible(scope, studentId));
}

/** Every band of the academy, and of the students whom the scope reaches, by first day, then in the order of entry. */
export function readGoalBands(db: Database, scope: AcademyScope): FiledGoalBand[] {
  const rows = db.orm
    .select({
      id: goalBand.id,
      fundamentalId: goalBand.fundamentalId,
      clubGroup: goalBand.clubGroup,
      scope: goalBand.scope,
      ageFrom: goalBand.ageFrom,
      ageTo: goalBand.ageTo,
      studentId: goalBand.studentId,
      low: goalBand.low,
      high: goalBand.high,
      from: goalBand.fromDay,
      reason: goalBand.reason,
      who: goalBand.who,
      createdAt: goalBand.createdAt,
    })
    .from(goalBand)
    .where(eq(goalBand.academyId, scope.academyId))
    .orderBy(asc(goalBand.fromDay), asc(goalBand.createdAt), asc(goalBand.id))
    .all();
  return visibleBands(scope, rows).map((row) => ({
    ...row,
    fundamentalId: row.fundamentalId as FundamentalId,
    clubGroup: row.clubGroup as ClubGroup,
  }));
}
