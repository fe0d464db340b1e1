import type { CalendarDay } from "@/lib/domain/calendar-day";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Session } from "@/lib/domain/session";
import type { Database } from "../client";
import { seenBy, VISIBLE_SQL } from "./visible";

/** One film of an academy as far as it is counted; nothing in it names who is in it but the id. */
export type AcademyFilm = Pick<Session, "studentId" | "day" | "clubGroup" | "circumstance"> & {
  /** Whether somebody set it, or a view of it, aside by hand. */
  readonly aside: "yes" | "no";
};

/** Every film of those who are here from a day on, by student and day. */
export function readAcademyFilms(db: Database, scope: AcademyScope, from: CalendarDay): AcademyFilm[] {
  return db.sqlite
    .prepare<[{ academyId: string; from: string; seen: string | null }], AcademyFilm>(
      `SELECT session.student_id AS studentId, session.day AS day, session.club_group AS clubGroup,
         session.circumstance AS circumstance,
         CASE WHEN session.set_aside_reason IS NOT NULL OR EXISTS (SELECT 1 FROM capture
           WHERE capture.session_id = session.id AND capture.set_aside_reason IS NOT NULL) THEN 'yes' ELSE 'no' END AS aside
       FROM session JOIN student ON student.id = session.student_id
       WHERE student.academy_id = @academyId AND ${VISIBLE_SQL} AND session.day >= @from
         AND student.departed_on IS NULL AND student.merged_into IS NULL
       ORDER BY session.student_id, session.day, session.id`,
    )
    .all({ academyId: scope.academyId, from, ...seenBy(scope) });
}
