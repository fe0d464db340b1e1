import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { importBatch } from "../schema";
import { seenBy, VISIBLE_SQL } from "./visible";

/** Kinds of what can have been built on an import's rows. */
export const BUILT_KINDS = [
  "correction",
  "reread",
  "read-back",
  "reading",
  "capture",
  "session",
  "change",
  "asking",
  "priority",
  "film-plan",
  "told",
  "waiting",
  "fair-allocation",
  "drill",
  "practice",
  "event",
  "goal-band",
  "consent",
  "height",
  "charge",
  "family-link",
  "family-request",
  "draft",
] as const;

type BuiltKind = (typeof BUILT_KINDS)[number];

/** What was built on an import: of one kind, for one student, in one session or beside all of them. */
export interface BuiltOnImport {
  /** `unseen`: something of students whom the viewer may not see; neither what nor how much, whose nor when is told. */
  readonly kind: BuiltKind | "unseen";
  readonly count: number;
  /** Null where it is unseen. */
  readonly studentId: string | null;
  readonly alias: string | null;
  readonly sessionId: string | null;
  readonly day: string | null;
}

/** Everybody of whose record some is the import's; asked once, since no index leads from a batch to its readings. */
export function readTouchedStudents(
  db: Database,
  batch: string,
): { readonly id: string /** 1: the import added the student. */; readonly isNew: 0 | 1 }[] {
  return db.sqlite
    .prepare<[{ batch: string }], { id: string; isNew: 0 | 1 }>(
      `WITH touched_session (id) AS (
         SELECT session_id FROM swing WHERE batch_id = :batch UNION SELECT session_id FROM capture WHERE batch_id = :batch
         UNION SELECT session_id FROM stated_capture_sd WHERE batch_id = :batch),
       touched (id) AS (
         SELECT id FROM student WHERE batch_id = :batch
         UNION SELECT student_id FROM session WHERE batch_id = :batch OR id IN touched_session
         UNION SELECT student_id FROM reading WHERE batch_id = :batch
         UNION SELECT student_id FROM consent WHERE batch_id = :batch
         UNION SELECT student_id FROM event WHERE batch_id = :batch
         UNION SELECT student_id FROM practice WHERE batch_id = :batch
         UNION SELECT student_id FROM drill_assignment WHERE batch_id = :batch)
       SELECT student.id, coalesce(student.batch_id = :batch, 0) AS isNew FROM student
       WHERE id IN touched ORDER BY id`,
    )
    .all({ batch });
}

const ROWS = `
  new_student AS (SELECT id FROM student WHERE batch_id = :batch),
  own_session AS (SELECT id, student_id FROM session WHERE batch_id = :batch),
  touched AS (SELECT value AS id FROM json_each(:touched))`;

// What hangs on a row of a file came after it. What bears no batch is told by its hour: an archive brings corrections and decisions of earlier days along. Heights bear
// neither, so with an archive they can't be told from later ones. A consent is withdrawn on a day that may lie in the past, so no
// hour tells: an archive's batch names those that came withdrawn, and any other "no" stays on file.
const CHECKS: Readonly<Record<BuiltKind, string>> = {
  correction: `SELECT reading.student_id, reading.session_id FROM correction JOIN reading ON reading.id = correction.reading_id
    WHERE reading.batch_id = :batch AND corrected_at > :since`,
  reread: `SELECT student_id, session_id FROM reread_item item JOIN reread_draw ON reread_draw.id = item.draw_id
    WHERE drawn_at > :since AND (EXISTS (SELECT 1 FROM swing WHERE swing.id = item.swing_id AND swing.batch_id = :batch)
      OR EXISTS (SELECT 1 FROM reading WHERE reading.swing_id = item.swing_id
        AND reading.fundamental_id = item.fundamental_id AND reading.batch_id = :batch)
      OR EXISTS (SELECT 1 FROM capture WHERE capture.session_id = item.session_id
        AND capture.film_reference = item.film_reference AND capture.batch_id = :batch))
    UNION ALL SELECT again.student_id, again.session_id FROM reading again JOIN reading first
      ON first.swing_id = again.swing_id AND first.fundamental_id = again.fundamental_id
    WHERE again.student_id IN touched AND again.reread > 0 AND first.batch_id = :batch AND again.batch_id IS NOT :batch
      AND NOT EXISTS (SELECT 1 FROM reread_item WHERE reading_id = again.id)`,
  "read-back": `SELECT session.student_id, session.id FROM read_back_item item
    JOIN read_back ON read_back.id = item.read_back_id
    JOIN swing ON swing.id = item.swing_id JOIN session ON session.id = swing.session_id
    WHERE drawn_at > :since AND (swing.batch_id = :batch OR EXISTS (SELECT 1 FROM capture WHERE capture.session_id = session.id
      AND capture.film_reference = item.film_reference AND capture.batch_id = :batch))`,
  reading: `SELECT session.student_id, session.id FROM session JOIN swing ON swing.session_id = session.id
      JOIN reading ON reading.swing_id = swing.id
    WHERE (session.batch_id = :batch OR swing.batch_id = :batch) AND reading.batch_id IS NOT :batch AND reading.reread = 0
    UNION ALL SELECT own.student_id, own.id FROM own_session own JOIN swing ON swing.session_id = own.id
    WHERE swing.batch_id IS NOT :batch AND NOT EXISTS (SELECT 1 FROM reading WHERE swing_id = swing.id)`,
  capture: `SELECT own.student_id, own.id FROM own_session own JOIN capture ON capture.session_id = own.id
    WHERE capture.batch_id IS NOT :batch
    UNION ALL SELECT own.student_id, own.id FROM own_session own JOIN stated_capture_sd sd ON sd.session_id = own.id
    WHERE sd.batch_id IS NOT :batch`,
  session: `SELECT student_id, id FROM session WHERE batch_id IS NOT :batch
    AND (student_id IN new_student OR (created_at > :at
      AND student_id IN (SELECT student_id FROM consent WHERE batch_id = :batch)))`,
  change: `SELECT student_id, session_id FROM record_change
    WHERE (changed_at > :since AND session_id IN (SELECT id FROM own_session))
      OR (changed_at > :at AND (student_id IN touched OR other_student_id IN touched))`,
  asking: "SELECT student_id, NULL FROM asking WHERE recorded_at > :at AND student_id IN touched",
  priority: "SELECT student_id, NULL FROM priority_choice WHERE recorded_at > :at AND student_id IN touched",
  "film-plan": "SELECT student_id, NULL FROM film_plan WHERE recorded_at > :at AND student_id IN touched",
  "fair-allocation": "SELECT student_id, NULL FROM fair_allocation WHERE recorded_at > :at AND student_id IN touched",
  told: "SELECT student_id, NULL FROM told WHERE recorded_at > :at AND student_id IN touched",
  waiting: "SELECT student_id, NULL FROM waiting WHERE recorded_at > :at AND student_id IN touched",
  drill: `SELECT student_id, NULL FROM drill_assignment WHERE batch_id IS NOT :batch
      AND (student_id IN new_student OR (recorded_at > :at AND student_id IN touched))
    UNION ALL SELECT student_id, NULL FROM drill_decision JOIN drill_assignment given ON given.id = assignment_id
    WHERE drill_decision.recorded_at > :at AND given.batch_id = :batch`,
  practice: `SELECT student_id, NULL FROM practice WHERE batch_id IS NOT :batch AND (student_id IN new_student
      OR assignment_id IN (SELECT id FROM drill_assignment WHERE batch_id = :batch))`,
  event: `SELECT student_id, NULL FROM event WHERE batch_id IS NOT :batch AND (student_id IN new_student
      OR (recorded_at > :at AND rebaselines <> '' AND student_id IN touched))
    UNION ALL SELECT event.student_id, NULL FROM rebaseline_change JOIN event ON event.id = rebaseline_change.event_id
    WHERE changed_at > :at AND (event.batch_id = :batch OR event.student_id IN touched)`,
  "goal-band": "SELECT student_id, NULL FROM goal_band WHERE created_at > :at AND student_id IN touched",
  consent: `SELECT student_id, NULL FROM consent WHERE batch_id IS NOT :batch AND student_id IN new_student
    UNION ALL SELECT student_id, NULL FROM consent WHERE batch_id = :batch AND withdrawn_on IS NOT NULL
      AND (:door <> 'archive' OR id NOT IN (SELECT value FROM import_batch, json_each(answers, '$.withdrawn')
        WHERE import_batch.id = :batch))`,
  height: "SELECT student_id, NULL FROM height WHERE student_id IN new_student AND :door <> 'archive'",
  // Handed over, or covered: the student is somebody else's work by now. A first charge goes along.
  charge: `SELECT student_id, NULL FROM charge WHERE student_id IN new_student AND recorded_at > :at
    AND from_coach_id IS NOT NULL`,
  // A family would find its page gone. One that was ended by hand goes along.
  "family-link": "SELECT student_id, NULL FROM family_link WHERE student_id IN new_student AND revoked_at IS NULL",
  "family-request":
    "SELECT student_id, NULL FROM family_request WHERE student_id IN new_student AND settled_at IS NULL",
  draft: `SELECT student_id, NULL FROM draft WHERE student_id IN new_student
    UNION ALL SELECT own.student_id, own.id FROM own_session own JOIN draft
      ON draft.kind IN ('correct-form ' || own.id, 'facts-form ' || own.id, 'move-form ' || own.id, 'split-form ' || own.id)
    WHERE own.student_id NOT IN new_student`,
};

const UNSEEN: BuiltOnImport = {
  kind: "unseen",
  ...{ count: 1, studentId: null, alias: null, sessionId: null, day: null },
};

/**
 * What was entered by others on top of an import's rows, so that taking these away would take that along or leave it
 * without ground: rows that hang on them, and decisions (asking, drill, goal, new beginning) of its students taken since.
 * Kinds in the order of `BUILT_KINDS`, then by name and day, last that there is something unseen. Who looked at a student whom it added, and what was announced to
 * be erased of them, goes along with the student. Empty: nothing.
 */
export function readBuiltOnImport(
  db: Database,
  scope: AcademyScope,
  batch: Pick<typeof importBatch.$inferSelect, "id" | "createdAt" | "door">,
): BuiltOnImport[] {
  const touched = JSON.stringify(readTouchedStudents(db, batch.id).map(({ id }) => id));
  const given = {
    batch: batch.id,
    at: batch.createdAt,
    since: batch.door === "archive" ? batch.createdAt : "",
    door: batch.door,
    academy: scope.academyId,
    touched,
    ...seenBy(scope),
  };
  const built = BUILT_KINDS.flatMap((kind) =>
    db.sqlite
      .prepare<[typeof given], BuiltOnImport>(
        `WITH ${ROWS}, built (student_id, session_id) AS (${CHECKS[kind]}),
           shown AS (SELECT iif(${VISIBLE_SQL}, student.id, NULL) AS id, session_id
             FROM built JOIN student ON student.id = built.student_id WHERE student.academy_id = :academy)
         SELECT '${kind}' AS kind, count(*) AS count, student.id AS studentId, student.alias, session.id AS sessionId,
           session.day
         FROM shown LEFT JOIN student ON student.id = shown.id
           LEFT JOIN session ON session.id = shown.session_id AND shown.id IS NOT NULL
         GROUP BY student.id, session.id ORDER BY student.id IS NULL, student.alias, session.day`,
      )
      .all(given),
  );
  const seen = built.filter(({ studentId }) => studentId !== null);
  return seen.length === built.length ? seen : [...seen, UNSEEN];
}
