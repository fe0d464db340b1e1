import { asc, eq } from "drizzle-orm";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { ClubGrouping } from "@/lib/domain/club-grouping";
import { type FilmPlan, type FilmPlanBody, parseFilmPlanBody } from "@/lib/domain/film-plan";
import { groupsSince } from "@/lib/domain/groups-since";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { session, student } from "../schema";
import { filmPlan } from "../schema-plans";
import { readClubGrouping } from "./club-groups";
import { seenBy, VISIBLE_SQL, within } from "./visible";

/** A film that was promised and hasn't come. */
export interface PromisedFilm {
  readonly planId: string;
  readonly studentId: string;
  readonly clubGroup: ClubGroup;
  readonly madeOn: string;
  readonly dueOn: string;
  readonly body: FilmPlanBody | null;
  readonly remindedAt: string | null;
}

/** With which clubs a plan is of those in use, and answered; a group that the academy never had stays as it was told. */
function clubsNow(grouping: ClubGrouping): (told: ClubGroup) => Pick<FilmPlan, "clubGroup" | "answeredWith"> {
  return (told) => {
    const since = groupsSince(grouping, told);
    if (since === null) return { clubGroup: told };
    return { clubGroup: since.now, ...(since.holding.length > 1 ? { answeredWith: since.holding } : {}) };
  };
}

/** Every plan of a student in the order in which they were told, what was taken back too. */
export function readFilmPlans(db: Database, scope: StudentScope): FilmPlan[] {
  return readAcademyFilmPlans(db, scope).map(({ studentId: _whose, ...plan }) => plan);
}

/** The same of everybody who may be seen, or of one, each with its student. */
export function readAcademyFilmPlans(
  db: Database,
  scope: AcademyScope | StudentScope,
): (FilmPlan & { readonly studentId: string })[] {
  const clubsOf = clubsNow(readClubGrouping(db, scope));
  return db.orm
    .select({
      studentId: filmPlan.studentId,
      id: filmPlan.id,
      clubGroup: filmPlan.clubGroup,
      madeOn: filmPlan.madeOn,
      dueOn: filmPlan.dueOn,
      body: filmPlan.body,
      who: filmPlan.who,
      recordedAt: filmPlan.recordedAt,
      remindedAt: filmPlan.remindedAt,
      voidedAt: filmPlan.voidedAt,
    })
    .from(filmPlan)
    .innerJoin(student, eq(student.id, filmPlan.studentId))
    .where(within(scope, filmPlan.studentId))
    .orderBy(asc(filmPlan.madeOn), asc(filmPlan.recordedAt), asc(filmPlan.id))
    .all()
    .map((row) => ({ ...row, ...clubsOf(row.clubGroup as ClubGroup), body: parseFilmPlanBody(row.body) }));
}

/**
 * The latest standing promise of every student with each group of clubs that has passed its day without any film with these
 * since it was made, the longest awaited first. One that was told before its clubs were grouped anew is of what they became. A film of the day on which it was made counts where it was entered afterwards. Whoever has left promises
 * nothing any more; counted from the plan, not from silence.
 *
 * @param day the promise's day has passed on it
 */
export function readPromisedFilms(db: Database, scope: AcademyScope, day: string): PromisedFilm[] {
  const grouping = readClubGrouping(db, scope);
  const clubsOf = clubsNow(grouping);
  const regrouped = grouping.flatMap(({ id, state }) => {
    if (state === "current") return [];
    const { clubGroup, answeredWith = [clubGroup] } = clubsOf(id);
    return answeredWith.map((holding) => ({ told: id, now: clubGroup, holding }));
  });
  return db.sqlite
    .prepare<object, Omit<PromisedFilm, "body"> & { body: string }>(
      `WITH regrouped AS (
         SELECT json_extract(value, '$.told') AS told, json_extract(value, '$.now') AS now,
           json_extract(value, '$.holding') AS holding FROM json_each(@regrouped)
       ), standing AS NOT MATERIALIZED (
         SELECT *, coalesce((SELECT now FROM regrouped WHERE told = film_plan.club_group LIMIT 1), club_group) AS now
         FROM film_plan WHERE voided_at IS NULL
       )
       SELECT plan.id AS planId, student.id AS studentId, plan.club_group AS clubGroup,
         plan.made_on AS madeOn, plan.due_on AS dueOn, plan.body, plan.reminded_at AS remindedAt
       FROM standing AS plan JOIN student ON student.id = plan.student_id
       WHERE student.academy_id = @academyId AND ${VISIBLE_SQL} AND student.merged_into IS NULL
         AND student.departed_on IS NULL AND plan.due_on < @day
         AND NOT EXISTS (SELECT 1 FROM session WHERE session.student_id = student.id
           AND (session.club_group = plan.now OR EXISTS (SELECT 1 FROM regrouped
             WHERE regrouped.told = plan.club_group AND regrouped.holding = session.club_group))
           AND (session.day > plan.made_on
             OR (session.day = plan.made_on AND session.created_at > plan.recorded_at)))
         AND NOT EXISTS (SELECT 1 FROM standing AS later WHERE later.student_id = student.id AND later.now = plan.now
           AND (later.made_on, later.recorded_at, later.id) > (plan.made_on, plan.recorded_at, plan.id))
       ORDER BY plan.due_on, student.alias, student.id`,
    )
    .all({ academyId: scope.academyId, ...seenBy(scope), day, regrouped: JSON.stringify(regrouped) })
    .map((row) => ({ ...row, clubGroup: clubsOf(row.clubGroup).clubGroup, body: parseFilmPlanBody(row.body) }));
}

/** When the films of a student were entered, by id. */
export function readFilmTimes(
  db: Database,
  scope: StudentScope,
): { readonly sessionId: string; readonly enteredAt: string }[] {
  return db.orm
    .select({ sessionId: session.id, enteredAt: session.createdAt })
    .from(session)
    .where(eq(session.studentId, scope.studentId))
    .all();
}
