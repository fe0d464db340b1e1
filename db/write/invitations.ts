import { and, eq, isNull } from "drizzle-orm";
import type { Database } from "../client";
import { invitation } from "../schema-people";

/** A link to be kept: never the link itself, only its SHA-256. */
export type NewInvitation = Omit<typeof invitation.$inferInsert, "usedAt" | "revokedAt">;

export function insertInvitation(db: Database, made: NewInvitation): void {
  db.orm.insert(invitation).values(made).run();
}

const unspent = and(isNull(invitation.usedAt), isNull(invitation.revokedAt));

/** Uses a link up; `unchanged`: it was used or revoked before. */
export function updateInvitationUsed(db: Database, id: string, now: string): "used" | "unchanged" {
  const { changes } = db.orm
    .update(invitation)
    .set({ usedAt: now })
    .where(and(eq(invitation.id, id), unspent))
    .run();
  return changes === 1 ? "used" : "unchanged";
}

/** Takes a link of an academy back; `unchanged`: there is none that could be. */
export function updateInvitationRevoked(
  db: Database,
  academyId: string,
  id: string,
  now: string,
): "revoked" | "unchanged" {
  const { changes } = db.orm
    .update(invitation)
    .set({ revokedAt: now })
    .where(and(eq(invitation.id, id), eq(invitation.academyId, academyId), unspent))
    .run();
  return changes === 1 ? "revoked" : "unchanged";
}

/** Takes back every link for a new password of somebody: a newer one is made, or their access ends. */
export function updatePasswordLinksRevoked(db: Database, userId: string, now: string): void {
  db.orm
    .update(invitation)
    .set({ revokedAt: now })
    .where(and(eq(invitation.userId, userId), unspent))
    .run();
}
