import { asc, eq } from "drizzle-orm";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { session } from "../schema";
import { lookNoise } from "../schema-work";
import { inForceSql } from "./in-force";

/** The name of the noise model with which the look after a session is said. */
export interface LookNoise {
  readonly sessionId: string;
  readonly fundamentalId: string;
  readonly noiseModelName: string;
}

/** A look that has no noise model yet. */
export interface BareLook {
  readonly studentId: string;
  readonly sessionId: string;
  readonly fundamentalId: string;
}

/** Id of a derived fundamental, of the one it starts from, and of the one that is taken off. */
export type DerivedId = readonly [id: string, minuend: string, subtrahend: string];

/** In the order of the sessions. */
export function readLookNoise(db: Database, scope: StudentScope): LookNoise[] {
  return db.orm
    .select({
      sessionId: lookNoise.sessionId,
      fundamentalId: lookNoise.fundamentalId,
      noiseModelName: lookNoise.noiseModelName,
    })
    .from(lookNoise)
    .innerJoin(session, eq(session.id, lookNoise.sessionId))
    .where(eq(lookNoise.studentId, scope.studentId))
    .orderBy(asc(session.day), asc(session.sequence), asc(session.clubGroup), asc(lookNoise.fundamentalId))
    .all();
}

/**
 * Looks of unaided sessions that are not set aside and hold a measured value, without a noise model. A derived
 * fundamental counts where one swing has both of its parts. In the order of students, sessions and fundamentals.
 */
export function readLooksWithoutNoise(
  db: Database,
  scope: AcademyScope | StudentScope,
  derived: readonly DerivedId[],
): BareLook[] {
  const one = "studentId" in scope;
  const { columns, tables } = inForceSql("now");
  const statement = db.sqlite.prepare<[{ owner: string; derived: string }], BareLook>(
    `WITH derived AS MATERIALIZED (
       SELECT value ->> 0 AS id, value ->> 1 AS minuend, value ->> 2 AS subtrahend FROM json_each(:derived)
     ),
     used AS MATERIALIZED (
       SELECT reading.student_id, reading.session_id, reading.swing_id, reading.fundamental_id,
         session.day, session.sequence, session.club_group
       FROM ${tables}
       WHERE ${one ? "reading.student_id = :owner" : "reading.student_id IN (SELECT id FROM student WHERE academy_id = :owner)"}
         AND session.circumstance = 'unaided' AND session.set_aside_reason IS NULL AND ${columns} IS NOT NULL
     ),
     look AS (
       SELECT DISTINCT student_id, session_id, fundamental_id, day, sequence, club_group FROM used
       UNION
       SELECT part.student_id, part.session_id, derived.id, part.day, part.sequence, part.club_group
       FROM used AS part
         JOIN derived ON derived.minuend = part.fundamental_id
         JOIN used AS other ON other.swing_id = part.swing_id AND other.fundamental_id = derived.subtrahend
     )
     SELECT student_id AS studentId, session_id AS sessionId, fundamental_id AS fundamentalId
     FROM look
     WHERE NOT EXISTS (SELECT 1 FROM look_noise
       WHERE look_noise.session_id = look.session_id AND look_noise.fundamental_id = look.fundamental_id)
     ORDER BY student_id, day, sequence, club_group, fundamental_id`,
  );
  return statement.all({ owner: one ? scope.studentId : scope.academyId, derived: JSON.stringify(derived) });
}
