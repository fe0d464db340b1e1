import type { ClubGroup } from "@/lib/domain/club-group";
import type { FundamentalId } from "@/lib/domain/fundamental";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";

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
  // A reading by the session's reader exists or not: corrections change its value, not its being there.
  const statement = db.sqlite.prepare<[string], TrackKey>(
    `SELECT reading.student_id AS studentId, reading.fundamental_id AS fundamentalId,
       session.club_group AS clubGroup, count(DISTINCT session.id) AS sessions, max(session.day) AS lastDay
     FROM reading
       JOIN session ON session.id = reading.session_id AND session.reader = reading.reader AND reading.reread = 0
     WHERE ${one ? "reading.student_id = ?" : "reading.student_id IN (SELECT id FROM student WHERE academy_id = ?)"}
     GROUP BY reading.student_id, reading.fundamental_id, session.club_group
     ORDER BY reading.student_id, reading.fundamental_id, session.club_group`,
  );
  return statement.all(one ? scope.studentId : scope.academyId);
}
