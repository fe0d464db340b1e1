import { asc, eq } from "drizzle-orm";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { FundamentalId } from "@/lib/domain/fundamental";
import type { GoalBand } from "@/lib/domain/goal-band";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { goalBand } from "../schema-work";

/** A goal band on file. */
export type FiledGoalBand = GoalBand & { readonly id: string; readonly createdAt: string };

/** Every band of the academy and its students, by first day, then in the order of entry. */
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
      createdAt: goalBand.createdAt,
    })
    .from(goalBand)
    .where(eq(goalBand.academyId, scope.academyId))
    .orderBy(asc(goalBand.fromDay), asc(goalBand.createdAt), asc(goalBand.id))
    .all();
  return rows.map((row) => ({
    ...row,
    fundamentalId: row.fundamentalId as FundamentalId,
    clubGroup: row.clubGroup as ClubGroup,
  }));
}
