import { and, eq, gte, isNull, or } from "drizzle-orm";
import type { Role } from "@/lib/domain/person";
import { type Database, inTransaction } from "../client";
import { assistance, charge, person, personRole } from "../schema-people";

/** Other roles for somebody, in place of those they had; `assists` are the coaches whom they help as an assistant. */
export function updateRoles(
  db: Database,
  userId: string,
  { roles, assists }: { readonly roles: readonly Role[]; readonly assists: readonly string[] },
): void {
  inTransaction(db, () => {
    db.orm.delete(personRole).where(eq(personRole.userId, userId)).run();
    for (const role of roles) db.orm.insert(personRole).values({ userId, role }).run();
    db.orm.delete(assistance).where(eq(assistance.assistantId, userId)).run();
    for (const coachId of assists) db.orm.insert(assistance).values({ assistantId: userId, coachId }).run();
  });
}

/** Somebody works here no more; their row stays, because what they entered names them. `unchanged`: they had left before. */
export function updatePersonEnded(
  db: Database,
  userId: string,
  ended: { readonly endedAt: string; readonly endedBy: string },
): "ended" | "unchanged" {
  const { changes } = db.orm
    .update(person)
    .set(ended)
    .where(and(eq(person.userId, userId), isNull(person.endedAt)))
    .run();
  return changes === 1 ? "ended" : "unchanged";
}

/**
 * Ends everything that a coach has in charge; the students are in nobody's until somebody is given them. What has run out
 * before `today` ended then, by nobody's hand, and stays as it is.
 */
export function updateChargesOfCoachEnded(
  db: Database,
  coachId: string,
  { today, ...ended }: { readonly today: string; readonly endedAt: string; readonly endedBy: string },
): void {
  const standsStill = or(
    isNull(charge.untilDay),
    and(gte(charge.untilDay, today), gte(charge.untilDay, charge.fromDay)),
  );
  db.orm
    .update(charge)
    .set(ended)
    .where(and(eq(charge.coachId, coachId), isNull(charge.endedAt), standsStill))
    .run();
}
