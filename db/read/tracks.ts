import type { ClubGroup } from "@/lib/domain/club-group";
import type { FundamentalId } from "@/lib/domain/fundamental";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/** One student × one fundamental × one club group that has readings in force. */
export interface TrackKey {
  readonly studentId: string;
  readonly fundamentalId: FundamentalId;
  readonly clubGroup: ClubGroup;
  /** Sessions with a reading in force, set aside or not. */
  readonly sessions: number;
  readonly lastDay: string;
}

/** Tracks of fundamentals that were read; those derived from two others are not among them. */
export function readTrackKeys(db: Database, scope: AcademyScope | StudentScope): TrackKey[] {
  const one = "studentId" in scope;
  // A reading by the session's reader exists or not: of corrections only the few that take one out change its being there.
  const seen = one ? { seen: null } : seenBy(scope);
  const statement = db.sqlite.prepare<[string, { seen: string | null }], TrackKey>(
    `SELECT student_id AS studentId, fundamental_id AS fundamentalId, club_group AS clubGroup,
       count(*) AS sessions, max(day) AS lastDay
     FROM (
       SELECT DISTINCT student_id, fundamental_id, session_id, reader FROM reading
       WHERE reread = 0 AND id NOT IN (
         SELECT reading_id FROM correction WHERE kind = 'void'
           AND id = (SELECT max(id) FROM correction AS later WHERE later.reading_id = correction.reading_id)
       ) AND ${one ? "student_id = ? AND @seen IS NULL" : `student_id IN (SELECT id FROM student WHERE academy_id = ? AND ${VISIBLE_SQL})`}
     ) AS reading
       CROSS JOIN session USING (student_id, reader)
     WHERE session.id = reading.session_id
     GROUP BY student_id, fundamental_id, club_group
     ORDER BY student_id, fundamental_id, club_group`,
  );
  return statement.all(one ? scope.studentId : scope.academyId, seen);
}
