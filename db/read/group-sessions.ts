import type { ClubGroup } from "@/lib/domain/club-group";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/** One student's session of a group. */
export interface GroupSession {
  readonly groupId: string;
  readonly sessionId: string;
  readonly studentId: string;
  readonly alias: string;
  readonly day: string;
  readonly clubGroup: ClubGroup;
  /** Counts the changes of the student's data. */
  readonly revision: number;
}

/** Every session of the academy that was filmed in a group, latest group first, students by alias. */
export function readGroupSessions(db: Database, scope: AcademyScope): GroupSession[] {
  return db.sqlite
    .prepare<[string, { seen: string | null }], GroupSession>(
      `SELECT session.group_id AS groupId, session.id AS sessionId, student.id AS studentId, student.alias, session.day,
         session.club_group AS clubGroup, student.revision
       FROM session JOIN student ON student.id = session.student_id
       WHERE student.academy_id = ? AND ${VISIBLE_SQL} AND session.group_id IS NOT NULL
       ORDER BY session.day DESC, session.group_id, student.alias, session.id`,
    )
    .all(scope.academyId, seenBy(scope));
}
