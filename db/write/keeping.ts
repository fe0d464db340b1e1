import { and, eq, isNotNull, isNull } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { academy } from "../schema";
import { familyLink, retentionNotice } from "../schema-privacy";

/** Says that something will be erased on a day. */
export function insertNotice(
  db: Database,
  { academyId }: AcademyScope,
  notice: Pick<typeof retentionNotice.$inferSelect, "id" | "kind" | "studentId" | "linkId" | "announcedAt" | "dueDay">,
): void {
  db.orm
    .insert(retentionNotice)
    .values({ ...notice, academyId })
    .run();
}

/** Takes an announcement back: what it was about is used again. */
export function deleteNotice(db: Database, { academyId }: AcademyScope, id: string): void {
  db.orm
    .delete(retentionNotice)
    .where(and(eq(retentionNotice.academyId, academyId), eq(retentionNotice.id, id)))
    .run();
}

/**
 * Lets go of an announcement that somebody keeps, so that its time runs again: it is announced anew, with all its days.
 *
 * @returns `gone`: no such announcement of the student is kept
 */
export function deleteHeldNotice(db: Database, scope: StudentScope, id: string): "released" | "gone" {
  const { changes } = db.orm
    .delete(retentionNotice)
    .where(
      and(
        eq(retentionNotice.id, id),
        eq(retentionNotice.academyId, scope.academyId),
        eq(retentionNotice.studentId, scope.studentId),
        isNotNull(retentionNotice.heldAt),
      ),
    )
    .run();
  return changes === 1 ? "released" : "gone";
}

/**
 * Keeps after all what was to be erased.
 *
 * @returns `gone`: no such announcement stands, or somebody has kept it before
 */
export function updateNoticeHeld(
  db: Database,
  scope: StudentScope,
  id: string,
  held: { readonly heldAt: string; readonly heldBy: string; readonly why: string },
): "held" | "gone" {
  const { changes } = db.orm
    .update(retentionNotice)
    .set(held)
    .where(
      and(
        eq(retentionNotice.id, id),
        eq(retentionNotice.academyId, scope.academyId),
        eq(retentionNotice.studentId, scope.studentId),
        isNull(retentionNotice.heldAt),
      ),
    )
    .run();
  return changes === 1 ? "held" : "gone";
}

/**
 * Lets nothing that is announced go before a day, by the clock; what somebody keeps is passed over.
 *
 * @param of `all`; or `waiting`: records alone whose family waits for an answer
 */
export function updateNoticesPostponed(
  db: Database,
  { academyId }: AcademyScope,
  { day, of }: { readonly day: string; readonly of: "all" | "waiting" },
): void {
  db.sqlite
    .prepare(
      `UPDATE retention_notice SET due_day = :day
       WHERE academy_id = :academyId AND held_at IS NULL AND due_day < :day
         AND (:of = 'all' OR (link_id IS NULL
           AND student_id IN (SELECT student_id FROM family_request WHERE settled_at IS NULL)))`,
    )
    .run({ academyId, day, of });
}

/** Removes a family's link that has ended, with its openings; what was asked through it stays. */
export function deleteEndedLink(db: Database, scope: StudentScope, linkId: string): void {
  db.orm
    .delete(familyLink)
    .where(and(eq(familyLink.id, linkId), eq(familyLink.studentId, scope.studentId)))
    .run();
}

/** Keeps the latest time that the machine's clock has shown. */
export function updateClockSeen(db: Database, { academyId }: AcademyScope, clockSeenAt: string): void {
  db.orm.update(academy).set({ clockSeenAt }).where(eq(academy.id, academyId)).run();
}
