import { and, eq, isNull, ne } from "drizzle-orm";
import type { Role } from "@/lib/domain/person";
import { type Database, inTransaction } from "../client";
import { importBatch, student } from "../schema";
import { accessToken, draft } from "../schema-entry";
import { account, assistance, authSession, charge, person, personRole, user } from "../schema-people";
import { seen } from "../schema-work";

/** Somebody who comes to work in an academy. */
export interface NewPerson {
  readonly userId: string;
  readonly academyId: string;
  readonly roles: readonly Role[];
  /** Ids of the coaches whom an assistant helps. */
  readonly assists: readonly string[];
  readonly addedAt: string;
  readonly addedBy: string;
}

/** A student given into somebody's charge. */
export interface NewCharge {
  readonly id: string;
  readonly studentId: string;
  readonly coachId: string;
  readonly kind: "own" | "cover";
  /** Who handed the student over; null or absent: a first coach. */
  readonly fromCoachId?: string | null;
  /** To the coach; null or absent: none. */
  readonly note?: string | null;
  readonly fromDay: string;
  readonly untilDay: string | null;
  readonly who: string;
  readonly recordedAt: string;
}

/** An account for somebody who will log in with a password; the log-in library reads it from now on. */
export function insertAccount(
  db: Database,
  made: {
    readonly userId: string;
    readonly name: string;
    readonly email: string;
    /** As the log-in library made it of the password. */
    readonly passwordHash: string;
    readonly now: Date;
  },
): void {
  const { userId, name, email, passwordHash, now } = made;
  const times = { createdAt: now, updatedAt: now };
  inTransaction(db, () => {
    db.orm
      .insert(user)
      .values({ id: userId, name, email, ...times })
      .run();
    db.orm
      .insert(account)
      .values({ id: userId, accountId: userId, providerId: "credential", userId, password: passwordHash, ...times })
      .run();
  });
}

/** Another password for an account, and the end of all its log-ins. */
export function updatePassword(db: Database, userId: string, passwordHash: string, now: Date): void {
  inTransaction(db, () => {
    db.orm
      .update(account)
      .set({ password: passwordHash, updatedAt: now })
      .where(and(eq(account.userId, userId), eq(account.providerId, "credential")))
      .run();
    db.orm.delete(authSession).where(eq(authSession.userId, userId)).run();
  });
}

/** Ends one log-in. */
export function deleteLogIn(db: Database, token: string): void {
  db.orm.delete(authSession).where(eq(authSession.token, token)).run();
}

export function insertPerson(db: Database, { roles, assists, ...added }: NewPerson): void {
  inTransaction(db, () => {
    db.orm.insert(person).values(added).run();
    for (const role of roles) db.orm.insert(personRole).values({ userId: added.userId, role }).run();
    insertAssists(db, added.userId, assists);
  });
}

/** The coaches for whom an assistant enters values, besides those already said. */
export function insertAssists(db: Database, assistantId: string, coachIds: readonly string[]): void {
  for (const coachId of coachIds) db.orm.insert(assistance).values({ assistantId, coachId }).run();
}

export function insertCharge(db: Database, given: NewCharge): void {
  db.orm.insert(charge).values(given).run();
}

/** Ends a charge by hand; one that was ended before stays as it is. */
export function updateChargeEnded(
  db: Database,
  chargeId: string,
  ended: { readonly endedAt: string; readonly endedBy: string },
): "ended" | "unchanged" {
  const { changes } = db.orm
    .update(charge)
    .set(ended)
    .where(and(eq(charge.id, chargeId), isNull(charge.endedAt)))
    .run();
  return changes === 1 ? "ended" : "unchanged";
}

/**
 * Makes an academy that was begun before there were accounts its first person's: every student, draft, key and preference.
 *
 * @param newId fresh ids
 */
export function adoptAcademy(
  db: Database,
  owner: {
    readonly userId: string;
    readonly academyId: string;
    readonly name: string;
    readonly fromDay: string;
    readonly now: string;
  },
  newId: () => string,
): void {
  const { userId, academyId, name, fromDay, now } = owner;
  inTransaction(db, () => {
    const students = db.orm.select({ id: student.id }).from(student).where(eq(student.academyId, academyId)).all();
    const until = { kind: "own", fromDay, untilDay: null } as const;
    for (const { id } of students)
      insertCharge(db, { id: newId(), studentId: id, coachId: userId, ...until, who: name, recordedAt: now });
    db.orm
      .update(draft)
      .set({ userId })
      .where(and(eq(draft.academyId, academyId), isNull(draft.userId)))
      .run();
    db.orm
      .update(accessToken)
      .set({ userId })
      .where(and(eq(accessToken.academyId, academyId), isNull(accessToken.userId)))
      .run();
    db.orm
      .update(importBatch)
      .set({ userId })
      .where(and(eq(importBatch.academyId, academyId), isNull(importBatch.userId)))
      .run();
    db.orm
      .update(seen)
      .set({ viewer: userId })
      .where(and(eq(seen.academyId, academyId), ne(seen.viewer, userId)))
      .run();
    // Somebody who has changed their name has some twice: what they set under the present one holds.
    const adopt = db.sqlite.prepare<[typeof owner]>(
      "UPDATE OR REPLACE preference SET viewer = :userId WHERE academy_id = :academyId AND viewer NOT IN (:userId, :name)",
    );
    const adoptPresent = db.sqlite.prepare<[typeof owner]>(
      "UPDATE OR REPLACE preference SET viewer = :userId WHERE academy_id = :academyId AND viewer = :name",
    );
    for (const statement of [adopt, adoptPresent]) statement.run(owner);
  });
}
