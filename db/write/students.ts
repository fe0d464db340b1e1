import { and, eq, ne, sql } from "drizzle-orm";
import type { Consent } from "@/lib/domain/consent";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import type { Language } from "@/lib/domain/language";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Student } from "@/lib/domain/student";
import { type Database, inTransaction } from "../client";
import type { Height } from "../read/students";
import { visible } from "../read/visible";
import { height, student } from "../schema";
import { personRole, user } from "../schema-people";
import { consent } from "../schema-privacy";
import { insertCharge } from "./people";

/** What a write takes from outside: the hour and fresh ids. */
export interface Stamp {
  readonly now: string;
  readonly newId: () => string;
  /** The import that the rows came with; absent or null: entered by hand. */
  readonly batchId?: string | null;
}

/** `alias-taken`: nothing was written. */
export type StudentInsert =
  | { readonly kind: "inserted"; readonly studentId: string }
  | { readonly kind: "alias-taken"; readonly studentId: string };

/**
 * Marks the student's data as changed, so that analyses which rest on the old data are known to be stale.
 *
 * @throws Error when the student isn't there or belongs to another academy; the transaction around it is undone
 */
export function updateRevision(db: Database, scope: StudentScope): void {
  const { changes } = db.orm
    .update(student)
    .set({ revision: sql`${student.revision} + 1` })
    .where(and(eq(student.id, scope.studentId), eq(student.academyId, scope.academyId)))
    .run();
  if (changes !== 1) throw new Error(`no such student: ${scope.studentId}`);
}

function consentRow(
  given: Consent,
  studentId: string,
  { now, newId, batchId = null }: Stamp,
): typeof consent.$inferInsert {
  const { kind, givenBy, giverIs, from, until, withdrawnOn } = given;
  const days = { fromDay: from, untilDay: until, withdrawnOn };
  return { id: newId(), studentId, kind, givenBy, giverIs, ...days, recordedAt: now, batchId };
}

/** Whoever adds a student has the student in charge, from the first film on that they may bring along, if they coach. */
export function takeInCharge(
  db: Database,
  { userId }: AcademyScope,
  studentId: string,
  { now, newId }: Pick<Stamp, "now" | "newId">,
): void {
  if (userId === null) return;
  const coach = db.orm
    .select({ who: user.name })
    .from(personRole)
    .innerJoin(user, eq(user.id, personRole.userId))
    .where(and(eq(personRole.userId, userId), eq(personRole.role, "coach")))
    .get();
  if (!coach) return;
  const always = { kind: "own", fromDay: SINCE_EVER, untilDay: null } as const;
  insertCharge(db, { id: newId(), studentId, coachId: userId, ...always, who: coach.who, recordedAt: now });
}

/** @param given what was consented to with it; null: nothing */
export function insertStudent(
  db: Database,
  scope: AcademyScope,
  entered: Student,
  given: Consent | readonly Consent[] | null,
  stamp: Stamp,
): StudentInsert {
  return inTransaction(db, () => {
    const taken = db.orm
      .select({ id: student.id })
      .from(student)
      .where(and(visible(scope), eq(student.alias, entered.alias)))
      .get();
    if (taken) return { kind: "alias-taken", studentId: taken.id };
    const { id, alias, birthYear, hand, zone, clubs, language } = entered;
    const { now: createdAt, batchId = null } = stamp;
    db.orm
      .insert(student)
      .values({ id, academyId: scope.academyId, alias, birthYear, hand, zone, clubs, language, createdAt, batchId })
      .run();
    for (const one of [given ?? []].flat())
      db.orm
        .insert(consent)
        .values(consentRow(one, id, stamp))
        .run();
    takeInCharge(db, scope, id, stamp);
    return { kind: "inserted", studentId: id };
  });
}

/** @returns id of the consent */
export function insertConsent(db: Database, scope: StudentScope, given: Consent, stamp: Stamp): string {
  return inTransaction(db, () => {
    updateRevision(db, scope);
    const row = consentRow(given, scope.studentId, stamp);
    db.orm.insert(consent).values(row).run();
    return row.id;
  });
}

/** A consent that was withdrawn before keeps its first day. */
export function updateConsentWithdrawn(
  db: Database,
  scope: StudentScope,
  {
    consentId,
    withdrawnOn,
    withdrawnBy = null,
  }: { readonly consentId: string; readonly withdrawnOn: string; readonly withdrawnBy?: string | null },
): { readonly kind: "updated" | "unchanged" } {
  return inTransaction(db, () => {
    const { changes } = db.orm
      .update(consent)
      .set({ withdrawnOn, withdrawnBy })
      .where(
        and(eq(consent.id, consentId), eq(consent.studentId, scope.studentId), sql`${consent.withdrawnOn} IS NULL`),
      )
      .run();
    if (changes === 0) return { kind: "unchanged" };
    updateRevision(db, scope);
    return { kind: "updated" };
  });
}

/** Names the consents that came withdrawn with an import: undone, it takes these along, and none that is withdrawn later. */
export function nameWithdrawn(db: Database, batchId: string): void {
  db.sqlite
    .prepare<[string]>(
      `UPDATE import_batch SET answers = json_set(answers, '$.withdrawn', (SELECT json_group_array(id)
         FROM consent WHERE batch_id = import_batch.id AND withdrawn_on IS NOT NULL)) WHERE id = ?`,
    )
    .run(batchId);
}

/** On which day a student left; null: is here. */
export function updateDeparted(db: Database, scope: StudentScope, departedOn: string | null): void {
  inTransaction(db, () => {
    updateRevision(db, scope);
    db.orm.update(student).set({ departedOn }).where(eq(student.id, scope.studentId)).run();
  });
}

/** In which language a family reads from now on. What was measured stays as it was, and so does all that was judged of it. */
export function updateLanguage(db: Database, scope: StudentScope, language: Language): "updated" | "unchanged" {
  const { changes } = db.orm
    .update(student)
    .set({ language })
    .where(and(eq(student.id, scope.studentId), eq(student.academyId, scope.academyId), ne(student.language, language)))
    .run();
  return changes === 1 ? "updated" : "unchanged";
}

/** The last height given for a day is the one that is kept. */
export function insertHeight(db: Database, scope: StudentScope, { day, cm }: Height): void {
  inTransaction(db, () => {
    updateRevision(db, scope);
    db.orm
      .insert(height)
      .values({ studentId: scope.studentId, day, cm })
      .onConflictDoUpdate({ target: [height.studentId, height.day], set: { cm } })
      .run();
  });
}
