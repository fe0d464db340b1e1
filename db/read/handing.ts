import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { Charge } from "./people";
import { seenBy, VISIBLE_SQL } from "./visible";

/** A charge of a student with the names of those whom it names. */
export type NamedCharge = Charge & {
  readonly coach: string;
  /** Empty: nobody handed the student over. */
  readonly fromCoach: string;
  /** 1: the coach works here and coaches. */
  readonly coaches: 0 | 1;
};

/** Every charge of a student, oldest first. */
export function readStudentCharges(db: Database, { studentId }: StudentScope): NamedCharge[] {
  return db.sqlite
    .prepare<[string], NamedCharge>(
      `SELECT charge.id, student_id AS studentId, coach_id AS coachId, kind, from_coach_id AS fromCoachId, note,
         from_day AS fromDay, until_day AS untilDay, charge.who, recorded_at AS recordedAt, charge.ended_at AS endedAt,
         charge.ended_by AS endedBy, coach.name AS coach, coalesce(giver.name, '') AS fromCoach,
         (person.ended_at IS NULL
           AND EXISTS (SELECT 1 FROM person_role WHERE user_id = coach_id AND role = 'coach')) AS coaches
       FROM charge JOIN user AS coach ON coach.id = coach_id JOIN person ON person.user_id = coach_id
         LEFT JOIN user AS giver ON giver.id = from_coach_id
       WHERE student_id = ? ORDER BY from_day, recorded_at, charge.id`,
    )
    .all(studentId);
}

/** A student whom a coach got from somebody. */
export type InheritedCharge = Pick<Charge, "id" | "studentId" | "kind" | "fromDay" | "untilDay" | "endedAt"> & {
  readonly alias: string;
  readonly fromCoach: string;
};

/** Every charge by which a coach got a student from somebody, of students who may be seen, oldest first. */
export function readInheritedCharges(db: Database, scope: AcademyScope, coachId: string): InheritedCharge[] {
  return db.sqlite
    .prepare<[{ academyId: string; coachId: string; seen: string | null }], InheritedCharge>(
      `SELECT charge.id, student_id AS studentId, kind, from_day AS fromDay, until_day AS untilDay,
         charge.ended_at AS endedAt, alias, coalesce(giver.name, '') AS fromCoach
       FROM charge JOIN student ON student.id = student_id LEFT JOIN user AS giver ON giver.id = from_coach_id
       WHERE student.academy_id = @academyId AND ${VISIBLE_SQL} AND coach_id = @coachId AND from_coach_id IS NOT NULL
       ORDER BY from_day, recorded_at, charge.id`,
    )
    .all({ academyId: scope.academyId, coachId, ...seenBy(scope) });
}

/** What lies open of a student beside the record: it goes along with a hand-over, or is to be finished by somebody. */
export interface OpenMatters {
  /** Unfinished forms about the student, by who types them. */
  readonly drafts: readonly { readonly userId: string; readonly name: string; readonly count: number }[];
  /** Links of the family that open a page at that hour. */
  readonly links: { readonly live: number; readonly firstEnd: string | null };
  /**
   * Draws for reading again with a film of the student; with others in it, nobody who lacks one of them sees it. `unseen`: of
   * the others, those whom the viewer may not see.
   */
  readonly draws: readonly {
    readonly id: string;
    readonly reader: string;
    readonly others: number;
    readonly unseen: number;
  }[];
}

/**
 * @param viewing whom the viewer may see
 * @param now ISO instant
 */
export function readOpenMatters(
  db: Database,
  { studentId, academyId }: StudentScope,
  viewing: AcademyScope,
  now: string,
): OpenMatters {
  const drafts = db.sqlite
    .prepare<[string, string], OpenMatters["drafts"][number]>(
      `SELECT user_id AS userId, user.name, count(*) AS count FROM draft JOIN user ON user.id = user_id
       WHERE academy_id = ? AND student_id = ? AND kind NOT LIKE 'dropped %' AND kind NOT LIKE 'handing-form %'
       GROUP BY user_id ORDER BY user.name, user_id`,
    )
    .all(academyId, studentId);
  const links = db.sqlite
    .prepare<[string, string], OpenMatters["links"]>(
      `SELECT count(*) AS live, min(expires_at) AS firstEnd FROM family_link
       WHERE student_id = ? AND revoked_at IS NULL AND expires_at > ?`,
    )
    .get(studentId, now) ?? { live: 0, firstEnd: null };
  const draws = db.sqlite
    .prepare<[{ academyId: string; studentId: string; seen: string | null }], OpenMatters["draws"][number]>(
      `SELECT reread_draw.id, reader, count(DISTINCT student_id) - 1 AS others,
         count(DISTINCT student_id) FILTER (WHERE student_id <> :studentId AND NOT ${VISIBLE_SQL}) AS unseen
       FROM reread_draw JOIN reread_item ON reread_item.draw_id = reread_draw.id JOIN student ON student.id = student_id
       WHERE reread_draw.academy_id = :academyId AND finished_on IS NULL GROUP BY reread_draw.id
       HAVING sum(student_id = :studentId) > 0 ORDER BY drawn_at, reread_draw.id`,
    )
    .all({ academyId, studentId, ...seenBy(viewing) });
  return { drafts, links, draws };
}

/** A form about a student that lies with somebody else than the student's coach. */
export interface StrayDraft {
  readonly id: string;
  readonly updatedAt: string;
  /** Who has the student now, and since which day. */
  readonly coachId: string;
  readonly fromDay: string;
  /** `lost`: whoever typed it may not see the student any more; `handed-over`: they still may, as a director. */
  readonly why: "lost" | "handed-over";
}

/**
 * Forms that were left behind when a student changed hands: typed by somebody who has lost the student, or by whoever handed
 * the student over.
 *
 * @param day the academy's day
 */
export function readStrayDrafts(db: Database, academyId: string, day: string): StrayDraft[] {
  return db.sqlite
    .prepare<[{ academyId: string; day: string }], StrayDraft>(
      `WITH held AS (
         SELECT charge.* FROM charge JOIN person ON person.user_id = coach_id AND person.ended_at IS NULL
           JOIN person_role ON person_role.user_id = coach_id AND role = 'coach'
         WHERE person.academy_id = :academyId AND charge.ended_at IS NULL AND from_day <= :day
           AND (until_day IS NULL OR until_day >= :day)),
       own AS (
         SELECT student_id, coach_id, from_coach_id, from_day,
           row_number() OVER (PARTITION BY student_id ORDER BY from_day DESC, recorded_at DESC, id) AS place
         FROM held WHERE kind = 'own'),
       stray AS (
         SELECT draft.id, updated_at, own.coach_id, own.from_day, own.from_coach_id = draft.user_id AS handed,
           EXISTS (SELECT 1 FROM person JOIN person_role USING (user_id)
             WHERE person.user_id = draft.user_id AND ended_at IS NULL AND (role = 'director'
               OR EXISTS (SELECT 1 FROM held WHERE held.student_id = draft.student_id AND (held.coach_id = person.user_id
                 OR (role = 'assistant' AND held.coach_id IN
                   (SELECT coach_id FROM assistance WHERE assistant_id = person.user_id)))))) AS sees
         FROM draft JOIN own ON own.student_id = draft.student_id AND own.place = 1
         WHERE draft.academy_id = :academyId AND draft.user_id IS NOT NULL AND draft.user_id <> own.coach_id
           AND draft.kind NOT LIKE 'handing-form %')
       SELECT id, updated_at AS updatedAt, coach_id AS coachId, from_day AS fromDay,
         iif(sees, 'handed-over', 'lost') AS why
       FROM stray WHERE NOT sees OR handed ORDER BY id`,
    )
    .all({ academyId, day });
}
