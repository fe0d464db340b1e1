import { and, eq, isNotNull, sql } from "drizzle-orm";
import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { GoalBand } from "@/lib/domain/goal-band";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { student } from "../schema";
import { goalBand } from "../schema-work";
import type { Stamp } from "./students";

export type GoalBandInsert =
  | { readonly kind: "inserted"; readonly id: string }
  | { readonly kind: "unknown-student"; readonly studentId: string | null };

type Reach = Pick<GoalBand, "scope" | "studentId">;

function concerned(scope: AcademyScope, band: Reach) {
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
  { now, newId, who = "" }: Stamp & { readonly who?: string },
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
        who,
        createdAt: now,
      })
      .run();
    return { kind: "inserted", id };
  });
}

/**
 * Days have come on which bands begin: the data of whomever those may reach count as changed, so that they are judged under
 * them. A new year does the same to whoever an age range may reach. Done twice it is done once more, without harm.
 *
 * @param days the day after which none was looked for, empty for never, and the last one that has come, or seemed to
 * @returns how often a student was marked
 */
export function updateBandsBegun(
  db: Database,
  scope: AcademyScope,
  days: { readonly after: CalendarDay; readonly upTo: CalendarDay },
): number {
  const bands = db.orm.select().from(goalBand).where(eq(goalBand.academyId, scope.academyId)).all();
  const begun: Reach[] = bands.filter(({ fromDay }) => fromDay > days.after && fromDay <= days.upTo);
  if (days.after.slice(0, 4) < days.upTo.slice(0, 4))
    begun.push(...bands.filter((band) => band.scope === "age-range").slice(0, 1));
  return inTransaction(db, () =>
    begun.reduce((marked, band) => {
      const { changes } = db.orm
        .update(student)
        .set({ revision: sql`${student.revision} + 1` })
        .where(concerned(scope, band))
        .run();
      return marked + changes;
    }, 0),
  );
}
