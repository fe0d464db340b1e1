import type { ClubGroup } from "@/lib/domain/club-group";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/** A film that came since a student's first standing plan. */
export interface PlannedFilm {
  readonly studentId: string;
  readonly clubGroup: ClubGroup;
  readonly day: string;
  /** ISO instant at which it was entered. */
  readonly enteredAt: string;
  /** Views of which there is a camera record, separated by commas; null: none. */
  readonly views: string | null;
  /** Fundamentals of which anything was read, the same way. */
  readonly fundamentals: string | null;
  readonly swings: number;
}

/**
 * Every film since the first standing plan of its student, by student and day, of all who may be seen. Of whom nothing was
 * planned nothing is read.
 */
export function readPlannedFilms(db: Database, scope: AcademyScope): PlannedFilm[] {
  return db.sqlite
    .prepare<[object], PlannedFilm>(
      `WITH planned AS (
         SELECT student_id, min(made_on) AS first FROM film_plan WHERE voided_at IS NULL GROUP BY student_id
       )
       SELECT session.student_id AS studentId, session.club_group AS clubGroup, session.day, session.created_at AS enteredAt,
         (SELECT group_concat(DISTINCT view) FROM capture WHERE capture.session_id = session.id) AS views,
         (SELECT group_concat(DISTINCT fundamental_id) FROM reading
           WHERE reading.session_id = session.id AND reading.reread = 0) AS fundamentals,
         (SELECT count(DISTINCT swing_id) FROM reading
           WHERE reading.session_id = session.id AND reading.reread = 0) AS swings
       FROM planned JOIN student ON student.id = planned.student_id
         JOIN session ON session.student_id = student.id AND session.day >= planned.first
       WHERE student.academy_id = @academyId AND ${VISIBLE_SQL}
       ORDER BY session.student_id, session.day, session.sequence`,
    )
    .all({ academyId: scope.academyId, ...seenBy(scope) });
}
