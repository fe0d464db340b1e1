import type { ArchivedStudent } from "@/lib/domain/archive";
import type { Database } from "../client";

type Assignment = ArchivedStudent["assignments"][number];

/** The drills of a student in the order of an archive, each with what was decided when it was to be measured again. */
export function readArchivedAssignments({ sqlite }: Database, studentId: string): Assignment[] {
  const decisions = sqlite.prepare<[string], Assignment["decisions"][number]>(
    `SELECT decision, why, remeasure_was AS remeasureWas, day, who, recorded_at AS recordedAt
     FROM drill_decision WHERE assignment_id = ? ORDER BY id`,
  );
  return sqlite
    .prepare<[string], Omit<Assignment, "decisions">>(
      `SELECT id, drill_id AS drillId, fundamental_id AS fundamentalId, start_day AS startDay, end_day AS endDay, dose,
         reps, minutes_a_day AS minutesADay, days_a_week AS daysAWeek, stop_rule AS stopRule, remeasure_on AS remeasureOn, who,
         recorded_at AS recordedAt, end_why AS endWhy, voided_at AS voidedAt
       FROM drill_assignment WHERE student_id = ? ORDER BY start_day, id`,
    )
    .all(studentId)
    .map((given) => ({ ...given, decisions: decisions.all(given.id) }));
}

/** What was put in hand against the order of work, and what the family was told to film, in the order of an archive. */
export function readArchivedPlans(
  { sqlite }: Database,
  studentId: string,
): Pick<ArchivedStudent, "priorities" | "filmPlans"> {
  return {
    priorities: sqlite
      .prepare<[string], ArchivedStudent["priorities"][number]>(
        `SELECT club_group AS clubGroup, fundamental_id AS fundamentalId, reason, day, who, recorded_at AS recordedAt
         FROM priority_choice WHERE student_id = ? ORDER BY id`,
      )
      .all(studentId),
    filmPlans: sqlite
      .prepare<[string], ArchivedStudent["filmPlans"][number]>(
        `SELECT id, club_group AS clubGroup, made_on AS madeOn, due_on AS dueOn, body, who, recorded_at AS recordedAt,
           reminded_at AS remindedAt, voided_at AS voidedAt
         FROM film_plan WHERE student_id = ? ORDER BY made_on, id`,
      )
      .all(studentId),
  };
}
