import { asc, eq } from "drizzle-orm";
import type { Database } from "../client";
import { invitation } from "../schema-people";

/** A one-time link as kept: its hash, never the link. */
export type Invitation = typeof invitation.$inferSelect;

/** All links of an academy in the order of making, also used and revoked ones. */
export function readInvitations(db: Database, academyId: string): Invitation[] {
  return db.orm
    .select()
    .from(invitation)
    .where(eq(invitation.academyId, academyId))
    .orderBy(asc(invitation.madeAt), asc(invitation.id))
    .all();
}

/** For the door: the link of a hash, whatever became of it. */
export function findInvitation(db: Database, tokenHash: string): Invitation | undefined {
  return db.orm.select().from(invitation).where(eq(invitation.tokenHash, tokenHash)).get();
}
