import { and, eq, gt, isNull } from "drizzle-orm";
import type { FamilyLink, FamilyRequest } from "@/lib/domain/family-link";
import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { familyLink, familyOpening, familyRequest } from "../schema-privacy";

/** A link to be kept: never the secret itself, only its SHA-256. */
export type NewFamilyLink = Pick<FamilyLink, "id" | "tokenHash" | "label" | "who" | "madeAt" | "expiresAt">;

export function insertFamilyLink(db: Database, scope: StudentScope, made: NewFamilyLink): void {
  db.orm
    .insert(familyLink)
    .values({ ...made, studentId: scope.studentId })
    .run();
}

function own(scope: StudentScope, id: string) {
  return and(eq(familyLink.id, id), eq(familyLink.studentId, scope.studentId), isNull(familyLink.revokedAt));
}

/** Takes a link of a student back; `unchanged`: there is none that could be. */
export function updateFamilyLinkRevoked(
  db: Database,
  scope: StudentScope,
  { id, who, now }: { readonly id: string; readonly who: string; readonly now: string },
): "revoked" | "unchanged" {
  const { changes } = db.orm.update(familyLink).set({ revokedAt: now, revokedBy: who }).where(own(scope, id)).run();
  return changes === 1 ? "revoked" : "unchanged";
}

/** Lets a link end later; `unchanged`: it has ended, was taken back, or isn't this student's. */
export function updateFamilyLinkRenewed(
  db: Database,
  scope: StudentScope,
  renewed: { readonly id: string; readonly who: string; readonly now: string; readonly expiresAt: string },
): "renewed" | "unchanged" {
  const { id, who, now, expiresAt } = renewed;
  const { changes } = db.orm
    .update(familyLink)
    .set({ expiresAt, renewedAt: now, renewedBy: who })
    .where(and(own(scope, id), gt(familyLink.expiresAt, now)))
    .run();
  return changes === 1 ? "renewed" : "unchanged";
}

/** Adds that a link's page was opened. */
export function insertOpening(db: Database, linkId: string, openedAt: string): void {
  db.orm.insert(familyOpening).values({ linkId, openedAt }).run();
}

/** Adds what a family asks for; `open-already`: the same is asked for by the same link and not settled. */
export function insertFamilyRequest(
  db: Database,
  scope: StudentScope,
  asked: Pick<FamilyRequest, "id" | "linkId" | "kind" | "askedAt">,
): "asked" | "open-already" {
  return inTransaction(db, () => {
    const open = db.orm
      .select({ id: familyRequest.id })
      .from(familyRequest)
      .where(
        and(
          eq(familyRequest.studentId, scope.studentId),
          asked.linkId === null ? isNull(familyRequest.linkId) : eq(familyRequest.linkId, asked.linkId),
          eq(familyRequest.kind, asked.kind),
          isNull(familyRequest.settledAt),
        ),
      )
      .get();
    if (open) return "open-already";
    db.orm
      .insert(familyRequest)
      .values({ ...asked, studentId: scope.studentId })
      .run();
    return "asked";
  });
}

/** Settles a request with an answer; `unchanged`: it was settled before, or isn't this student's. */
export function updateFamilyRequestSettled(
  db: Database,
  scope: StudentScope,
  {
    id,
    who,
    now,
    answer,
  }: { readonly id: string; readonly who: string; readonly now: string; readonly answer: string },
): "settled" | "unchanged" {
  const { changes } = db.orm
    .update(familyRequest)
    .set({ settledAt: now, settledBy: who, answer })
    .where(and(eq(familyRequest.id, id), eq(familyRequest.studentId, scope.studentId), isNull(familyRequest.settledAt)))
    .run();
  return changes === 1 ? "settled" : "unchanged";
}
