import type { StudentScope } from "@/lib/domain/scope";
import type { EnteredSession } from "@/lib/domain/session-entry";
import { type Database, inTransaction } from "../client";
import { insertSession } from "./sessions";
import type { Stamp } from "./students";

/** One student's session of a group. */
export interface GroupPart {
  readonly scope: StudentScope;
  readonly session: EnteredSession;
}

/**
 * The sessions of one occasion, all of them or none.
 *
 * @returns `exists` where a session of that group is on file: nothing was written
 * @throws Error where one of them can't be written; none is
 */
export function insertGroupSessions(
  db: Database,
  groupId: string,
  parts: readonly GroupPart[],
  stamp: Stamp,
): "inserted" | "exists" {
  return inTransaction(db, () => {
    const filed = db.sqlite
      .prepare<[string], number>("SELECT count(*) FROM session WHERE group_id = ?")
      .pluck()
      .get(groupId);
    if (filed !== 0) return "exists";
    for (const { scope, session } of parts) {
      const made = insertSession(db, scope, { ...session, groupId }, { ...stamp, batchId: null });
      if (made.kind === "exists") throw new Error(`a session of that id is on file: ${made.sessionId}`);
    }
    return "inserted";
  });
}
