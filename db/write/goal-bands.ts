import { and, eq, isNotNull, sql } from "drizzle-orm";
import type { GoalBand } from "@/lib/domain/goal-band";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { student } from "../schema";
import { goalBand } from "../schema-work";
import type { Stamp } from "./students";

export type GoalBandInsert =
  | { readonly kind: "inserted"; readonly id: string }
  | { readonly kind: "unknown-student"; readonly studentId: string | null };

function concerned(scope: AcademyScope, band: GoalBand) {
  return and(
    eq(student.academyId, scope.academyId),
    band.scope === "student" ? eq(student.id, band.studentId ?? "") : undefined,
    band.scope === "age-range" ? isNotNull(student.birthYear) : undefined,
  );
}

/**
 * A new band beside the earlier ones; the data of every student whom it may reach count as changed.
 *
 * @throws RangeError for a built-in band: those are the catalogue's
 */
export function insertGoalBand(
  db: Database,
  scope: AcademyScope,
  band: GoalBand,
  { now, newId }: Stamp,
): GoalBandInsert {
  const reach = band.scope;
  if (reach === "built-in") throw new RangeError("a built-in band is not kept here");
  return inTransaction(db, () => {
    const { changes } = db.orm
      .update(student)
      .set({ revision: sql`${student.revision} + 1` })
      .where(concerned(scope, band))
      .run();
    if (reach === "student" && changes !== 1) return { kind: "unknown-student", studentId: band.studentId };
    const { fundamentalId, clubGroup, low, high, from, reason } = band;
    const id = newId();
    db.orm
      .insert(goalBand)
      .values({
        id,
        academyId: scope.academyId,
        fundamentalId,
        clubGroup,
        scope: reach,
        ageFrom: reach === "age-range" ? band.ageFrom : null,
        ageTo: reach === "age-range" ? band.ageTo : null,
        studentId: reach === "student" ? band.studentId : null,
        low,
        high,
        fromDay: from,
        reason,
        createdAt: now,
      })
      .run();
    return { kind: "inserted", id };
  });
}
