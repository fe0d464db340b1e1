import { asc, eq } from "drizzle-orm";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { FundamentalId } from "@/lib/domain/fundamental";
import type { GoalBand } from "@/lib/domain/goal-band";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { goalBand } from "../schema-work";

/** The academy's dated goal bands, oldest first. */
export function readGoalBands(db: Database, scope: AcademyScope): GoalBand[] {
  return db.orm
    .select()
    .from(goalBand)
    .where(eq(goalBand.academyId, scope.academyId))
    .orderBy(asc(goalBand.fromDay), asc(goalBand.createdAt), asc(goalBand.id))
    .all()
    .map((row) => ({
      fundamentalId: row.fundamentalId as FundamentalId,
      clubGroup: row.clubGroup as ClubGroup,
      scope: row.scope,
      ageFrom: row.ageFrom,
      ageTo: row.ageTo,
      studentId: row.studentId,
      low: row.low,
      high: row.high,
      from: row.fromDay,
      reason: row.reason,
    }));
}
