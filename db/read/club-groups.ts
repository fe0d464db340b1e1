import { asc, eq } from "drizzle-orm";
import type { ClubGroup } from "@/lib/domain/club-group";
import { type ClubGrouping, parseClubGrouping, SHORT_LIST } from "@/lib/domain/club-grouping";
import type { RecordedRegrouping } from "@/lib/domain/regroup-clubs";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { splitWords } from "../joined-words";
import { clubRegrouping } from "../schema-work";
import { seenBy, VISIBLE_SQL } from "./visible";

/** Either proof names an academy; its club groups are nobody's data. */
export type AcademyKey = AcademyScope | StudentScope;

/** Every change of the club groups, oldest first. */
export function readRegroupings(db: Database, scope: AcademyKey): RecordedRegrouping[] {
  return db.orm
    .select()
    .from(clubRegrouping)
    .where(eq(clubRegrouping.academyId, scope.academyId))
    .orderBy(asc(clubRegrouping.number))
    .all()
    .map(({ academyId: _, fromGroups, toGroups, grouping, ...row }) => ({
      ...row,
      from: splitWords(fromGroups) as ClubGroup[],
      to: splitWords(toGroups) as ClubGroup[],
      grouping: parseClubGrouping(grouping),
    }));
}

/** The academy's club groups as they are now: the short list until it was changed. */
export function readClubGrouping(db: Database, scope: AcademyKey): ClubGrouping {
  const newest = db.sqlite
    .prepare<[string], string>("SELECT grouping FROM club_regrouping WHERE academy_id = ? ORDER BY number DESC LIMIT 1")
    .pluck()
    .get(scope.academyId);
  return newest === undefined ? SHORT_LIST : parseClubGrouping(newest);
}

/** How much a club group in force is used: by students whom the scope reaches, and by all others. */
export interface GroupUse {
  readonly clubGroup: ClubGroup;
  readonly sessions: number;
  readonly students: number;
  readonly otherSessions: number;
  readonly otherStudents: number;
}

/** Of each club group that has sessions. What is counted of others is told only where they are enough (`small-group.ts`). */
export function readGroupUse(db: Database, scope: AcademyScope): GroupUse[] {
  return db.sqlite
    .prepare<[{ academyId: string; seen: string | null }], GroupUse>(
      `SELECT club_group AS clubGroup,
         sum(mine) AS sessions, count(DISTINCT iif(mine, student_id, NULL)) AS students,
         sum(NOT mine) AS otherSessions, count(DISTINCT iif(mine, NULL, student_id)) AS otherStudents
       FROM (SELECT club_group, student_id, ${VISIBLE_SQL} AS mine
             FROM session JOIN student ON student.id = session.student_id WHERE student.academy_id = @academyId)
       GROUP BY club_group ORDER BY club_group`,
    )
    .all({ academyId: scope.academyId, ...seenBy(scope) });
}

/** The club of each session of a group as somebody wrote it; null where none was. */
export function readGroupClubs(db: Database, scope: AcademyScope, clubGroup: string): (string | null)[] {
  return db.sqlite
    .prepare<[string, string], string | null>(
      `SELECT session.club FROM session JOIN student ON student.id = session.student_id
       WHERE student.academy_id = ? AND club_group = ? ORDER BY session.day, session.id`,
    )
    .pluck()
    .all(scope.academyId, clubGroup);
}
