import { and, eq, lt, not, or, sql } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { KEPT } from "../read/kept-files";
import { draft, formReceipt } from "../schema-entry";
import { authSession, signInTry, verification } from "../schema-people";

/** Instants before which what nobody needs any more is removed. */
export interface RemainsBefore {
  readonly drafts: string;
  readonly receipts: string;
  readonly tries: Date;
}

/** What was removed. */
export interface RemainsGone {
  readonly drafts: number;
  readonly receipts: number;
  readonly tries: number;
}

/**
 * Removes forms that nobody has touched, answers to forms and counts of wrong passwords from before. What an import keeps for
 * its own page and its undo isn't a form, and goes by rules of its own.
 */
export function deleteRemains(db: Database, { academyId }: AcademyScope, before: RemainsBefore): RemainsGone {
  const imported = or(sql`${draft.kind} LIKE ${`${KEPT}%`}`, eq(draft.kind, "import-conflicts"));
  const drafts = db.orm
    .delete(draft)
    .where(and(eq(draft.academyId, academyId), lt(draft.updatedAt, before.drafts), not(imported ?? sql`0`)))
    .run().changes;
  const receipts = db.orm
    .delete(formReceipt)
    .where(and(eq(formReceipt.academyId, academyId), lt(formReceipt.savedAt, before.receipts)))
    .run().changes;
  const until = before.tries.getTime();
  const tries = db.orm
    .delete(signInTry)
    .where(and(lt(signInTry.lastAt, until), lt(signInTry.waitUntil, until)))
    .run().changes;
  return { drafts, receipts, tries };
}

/**
 * Ends log-ins for good that have ended by the clock, so that a clock put back brings none of them back.
 *
 * @param longestMs a log-in ends so long after it began, used or not
 * @returns how many
 */
export function deleteEndedLogIns(db: Database, now: Date, longestMs: number): number {
  db.orm.delete(verification).where(lt(verification.expiresAt, now)).run();
  const begun = new Date(now.getTime() - longestMs);
  return db.orm
    .delete(authSession)
    .where(or(lt(authSession.expiresAt, now), lt(authSession.createdAt, begun)))
    .run().changes;
}
