import { and, asc, count, desc, eq, gt, isNull, lte } from "drizzle-orm";
import type { FamilyLink, FamilyRequest } from "@/lib/domain/family-link";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { student } from "../schema";
import { familyLink, familyOpening, familyRequest } from "../schema-privacy";
import { visible } from "./visible";

/** For the gate: the link whose secret has that hash, whatever became of it. */
export function findFamilyLinkByHash(db: Database, tokenHash: string): FamilyLink | undefined {
  return db.orm.select().from(familyLink).where(eq(familyLink.tokenHash, tokenHash)).get();
}

/** For the gate: the link whose page has that id, whatever became of it. */
export function findFamilyLink(db: Database, id: string): FamilyLink | undefined {
  return db.orm.select().from(familyLink).where(eq(familyLink.id, id)).get();
}

/** Every link of a student, latest made first, also ended and revoked ones. */
export function readFamilyLinks(db: Database, scope: StudentScope): FamilyLink[] {
  return db.orm
    .select()
    .from(familyLink)
    .where(eq(familyLink.studentId, scope.studentId))
    .orderBy(desc(familyLink.madeAt), asc(familyLink.id))
    .all();
}

/** A link of a student whom a viewer may see, with the alias. */
export interface EndingLink {
  readonly studentId: string;
  readonly alias: string;
  readonly label: string;
  readonly expiresAt: string;
}

/** Links of students in sight that open now and end by a given instant, the first to end first. */
export function readEndingLinks(
  db: Database,
  scope: AcademyScope,
  { now, by }: { readonly now: string; readonly by: string },
): EndingLink[] {
  return db.orm
    .select({
      studentId: student.id,
      alias: student.alias,
      label: familyLink.label,
      expiresAt: familyLink.expiresAt,
    })
    .from(familyLink)
    .innerJoin(student, eq(student.id, familyLink.studentId))
    .where(
      and(
        visible(scope),
        isNull(familyLink.revokedAt),
        gt(familyLink.expiresAt, now),
        lte(familyLink.expiresAt, by),
        isNull(student.mergedInto),
      ),
    )
    .orderBy(asc(familyLink.expiresAt), asc(familyLink.id))
    .all();
}

/** When a link was opened, latest first. */
export interface Opening {
  readonly linkId: string;
  readonly openedAt: string;
}

/** Openings of a student's links, latest first. */
export function readOpenings(db: Database, scope: StudentScope): Opening[] {
  return db.orm
    .select({ linkId: familyOpening.linkId, openedAt: familyOpening.openedAt })
    .from(familyOpening)
    .innerJoin(familyLink, eq(familyLink.id, familyOpening.linkId))
    .where(eq(familyLink.studentId, scope.studentId))
    .orderBy(desc(familyOpening.id))
    .all();
}

/** What a student's family asked for, latest first, also what is settled. */
export function readFamilyRequests(db: Database, scope: StudentScope): FamilyRequest[] {
  return db.orm
    .select({
      id: familyRequest.id,
      linkId: familyRequest.linkId,
      kind: familyRequest.kind,
      askedAt: familyRequest.askedAt,
      settledAt: familyRequest.settledAt,
      settledBy: familyRequest.settledBy,
      answer: familyRequest.answer,
    })
    .from(familyRequest)
    .where(eq(familyRequest.studentId, scope.studentId))
    .orderBy(desc(familyRequest.askedAt), asc(familyRequest.id))
    .all();
}

/** Students in sight whose families wait for an answer, with how many requests are open. */
export function readOpenRequests(
  db: Database,
  scope: AcademyScope,
): readonly { readonly studentId: string; readonly alias: string; readonly open: number }[] {
  return db.orm
    .select({ studentId: student.id, alias: student.alias, open: count() })
    .from(familyRequest)
    .innerJoin(student, eq(student.id, familyRequest.studentId))
    .where(and(visible(scope), isNull(familyRequest.settledAt), isNull(student.mergedInto)))
    .groupBy(student.id, student.alias)
    .orderBy(asc(student.alias))
    .all();
}
