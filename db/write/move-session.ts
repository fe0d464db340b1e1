import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { isBeingRead } from "../read/being-read";
import { movedSession } from "./moved-rows";
import { type ChangeNote, writeRecordChange } from "./record-changes";

/** `being-read`: its swings are in a reading back that isn't finished; nothing was written. */
export type SessionMove =
  | { readonly kind: "moved"; readonly changeId: number }
  | { readonly kind: "unknown-session" | "same-student" | "being-read" };

/** Gives a session with its readings to another student of the academy, and keeps how it was. */
export function moveSession(
  db: Database,
  { from, to }: { readonly from: StudentScope; readonly to: StudentScope },
  { sessionId, turned }: { readonly sessionId: string; readonly turned: readonly string[] },
  note: ChangeNote,
): SessionMove {
  return inTransaction(db, () => {
    const own = db.sqlite
      .prepare("SELECT 1 FROM session WHERE id = ? AND student_id = ?")
      .get(sessionId, from.studentId);
    if (!own) return { kind: "unknown-session" };
    if (from.studentId === to.studentId) return { kind: "same-student" };
    if (isBeingRead(db, [sessionId])) return { kind: "being-read" };
    const change = {
      kind: "move-session",
      studentId: from.studentId,
      otherStudentId: to.studentId,
      sessionId,
      after: movedSession(db, sessionId, { studentId: to.studentId, turned }),
    } as const;
    return { kind: "moved", changeId: writeRecordChange(db, from, change, note) };
  });
}
