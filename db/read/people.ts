import { and, asc, eq, gte, inArray, isNull, lte, or } from "drizzle-orm";
import { type Person, ROLES, type Role } from "@/lib/domain/person";
import type { Database } from "../client";
import { assistance, charge, person, personRole, user } from "../schema-people";

/** Somebody's time in charge of a student. */
export type Charge = typeof charge.$inferSelect;

function withRoles(db: Database, rows: readonly Omit<Person, "roles">[]): Person[] {
  const ids = rows.map((row) => row.userId);
  const given = db.orm.select().from(personRole).where(inArray(personRole.userId, ids)).all();
  return rows.map((row) => {
    const held = new Set<Role>(given.filter((each) => each.userId === row.userId).map((each) => each.role));
    return { ...row, roles: ROLES.filter((role) => held.has(role)) };
  });
}

const fields = {
  userId: person.userId,
  academyId: person.academyId,
  name: user.name,
  email: user.email,
  endedAt: person.endedAt,
};

/** For the gate: who logged in; undefined: nobody of an academy. */
export function readPerson(db: Database, userId: string): Person | undefined {
  const rows = db.orm
    .select(fields)
    .from(person)
    .innerJoin(user, eq(user.id, person.userId))
    .where(eq(person.userId, userId))
    .all();
  return withRoles(db, rows)[0];
}

/** Everybody who works or worked in an academy, by name. */
export function readPeople(db: Database, academyId: string): Person[] {
  const rows = db.orm
    .select(fields)
    .from(person)
    .innerJoin(user, eq(user.id, person.userId))
    .where(eq(person.academyId, academyId))
    .orderBy(asc(user.name), asc(person.userId))
    .all();
  return withRoles(db, rows);
}

/** Ids of the coaches for whom an assistant enters values. */
export function readAssisted(db: Database, assistantId: string): string[] {
  return db.orm
    .select({ id: assistance.coachId })
    .from(assistance)
    .where(eq(assistance.assistantId, assistantId))
    .all()
    .map((row) => row.id);
}

function inForce(day: string) {
  return and(isNull(charge.endedAt), lte(charge.fromDay, day), or(isNull(charge.untilDay), gte(charge.untilDay, day)));
}

/** For the gate: ids of the students whom any of some coaches have in charge on a day. */
export function readChargedStudents(db: Database, coachIds: readonly string[], day: string): string[] {
  return db.orm
    .selectDistinct({ id: charge.studentId })
    .from(charge)
    .where(and(inArray(charge.coachId, [...coachIds]), inForce(day)))
    .orderBy(asc(charge.studentId))
    .all()
    .map((row) => row.id);
}

/** Everybody's charges of an academy, oldest first. */
export function readCharges(db: Database, academyId: string): Charge[] {
  return db.orm
    .select({ charge })
    .from(charge)
    .innerJoin(person, eq(person.userId, charge.coachId))
    .where(eq(person.academyId, academyId))
    .orderBy(asc(charge.fromDay), asc(charge.recordedAt), asc(charge.id))
    .all()
    .map((row) => row.charge);
}

/** Since when everybody of an academy works there, by user id. */
export function readAddedAt(db: Database, academyId: string): ReadonlyMap<string, string> {
  const rows = db.orm
    .select({ id: person.userId, at: person.addedAt })
    .from(person)
    .where(eq(person.academyId, academyId))
    .all();
  return new Map(rows.map(({ id, at }) => [id, at]));
}
