import type { ClubGroup } from "@/lib/domain/club-group";
import type { FundamentalId } from "@/lib/domain/fundamental";
import type { AcademyScope, StudentScope } from "@/lib/domain/scope";
import type { Reading } from "@/lib/domain/session";
import type { Database } from "../client";
import { inForceSql } from "./in-force";
import { seenBy, VISIBLE_SQL } from "./visible";

/** A reading in force with its number, by which it is corrected, and the hour of its latest correction. */
export type FiledReading = Reading & { readonly id: number; readonly correctedAt: string | null };

/** The readings in force of one student. */
export interface StudentReadings {
  readonly studentId: string;
  readonly readings: readonly FiledReading[];
}

/** Which readings; what is left out does not restrict. */
export interface ReadingFilter {
  readonly fundamentalId?: FundamentalId;
  readonly clubGroup?: ClubGroup;
  /** ISO time: only what had been entered and corrected by then. */
  readonly knownAt?: string;
}

/** What stood, as a value and as typed; `void`: the reading didn't count. */
export interface StoodValue {
  readonly kind: "change" | "void";
  readonly value: number | null;
  readonly typed: string;
}

/** A correction with what it corrects. */
export interface FiledCorrection {
  readonly id: number;
  readonly readingId: number;
  readonly sessionId: string;
  readonly swing: number;
  readonly fundamentalId: FundamentalId;
  readonly before: StoodValue;
  readonly after: StoodValue;
  readonly who: string;
  readonly why: string;
  readonly correctedAt: string;
}

function prepareReadings(db: Database, filter: ReadingFilter) {
  const { columns, tables, stands } = inForceSql(filter.knownAt === undefined ? "now" : "then");
  const fundamental = filter.fundamentalId === undefined ? "" : "AND reading.fundamental_id = :fundamentalId";
  const clubGroup = filter.clubGroup === undefined ? "" : "AND session.club_group = :clubGroup";
  return db.sqlite.prepare<[ReadingFilter & { studentId: string }], FiledReading>(
    `SELECT reading.id, reading.session_id AS sessionId, swing.number AS swing,
       reading.fundamental_id AS fundamentalId, ${columns} AS value,
       iif(correction.id IS NULL, reading.typed, correction.typed) AS typed,
       reading.sign_rule AS signRule, correction.corrected_at AS correctedAt
     FROM ${tables}
       JOIN swing ON swing.id = reading.swing_id
     WHERE reading.student_id = :studentId AND ${stands} ${fundamental} ${clubGroup}
     ORDER BY session.day, session.sequence, session.club_group, swing.number, reading.fundamental_id`,
  );
}

/** One reading for each swing and fundamental, in the order of the sessions and their swings. */
export function readReadingsInForce(db: Database, scope: StudentScope, filter: ReadingFilter = {}): FiledReading[] {
  return prepareReadings(db, filter).all({ ...filter, studentId: scope.studentId });
}

/** Ids of what is measured of one student: what a reading in force is of. */
export function readMeasuredIds(db: Database, { studentId }: StudentScope): FundamentalId[] {
  const { tables, stands } = inForceSql("now");
  return db.sqlite
    .prepare<[{ studentId: string }], FundamentalId>(
      `SELECT DISTINCT reading.fundamental_id FROM ${tables} WHERE reading.student_id = :studentId AND ${stands}
       ORDER BY reading.fundamental_id`,
    )
    .pluck()
    .all({ studentId });
}

/** The readings in force of the whole academy, student by student; students without readings are left out. */
export function* readAcademyReadings(
  db: Database,
  scope: AcademyScope,
  filter: ReadingFilter = {},
): Generator<StudentReadings, void, undefined> {
  const students = db.sqlite
    .prepare<[string, { seen: string | null }], string>(
      `SELECT id FROM student WHERE academy_id = ? AND ${VISIBLE_SQL} ORDER BY id`,
    )
    .pluck()
    .all(scope.academyId, seenBy(scope));
  const statement = prepareReadings(db, filter);
  for (const studentId of students) {
    const readings = statement.all({ ...filter, studentId });
    if (readings.length > 0) yield { studentId, readings };
  }
}

/** Every correction of a first reading in the order in which they were made, with what stood before each. */
export function readCorrections(db: Database, scope: StudentScope): FiledCorrection[] {
  const rows = db.sqlite
    .prepare<
      [string],
      Omit<FiledCorrection, "before" | "after"> & {
        kind: "change" | "void";
        value: number | null;
        typed: string;
        kindBefore: "change" | "void";
        valueBefore: number | null;
        typedBefore: string;
      }
    >(
      `SELECT correction.id, reading.id AS readingId, reading.session_id AS sessionId, swing.number AS swing,
         reading.fundamental_id AS fundamentalId, correction.who, correction.why,
         correction.corrected_at AS correctedAt, correction.kind, correction.value, correction.typed,
         coalesce(earlier.kind, 'change') AS kindBefore,
         iif(earlier.id IS NULL, reading.value, earlier.value) AS valueBefore,
         iif(earlier.id IS NULL, reading.typed, earlier.typed) AS typedBefore
       FROM reading
         JOIN correction ON correction.reading_id = reading.id
         JOIN swing ON swing.id = reading.swing_id
         LEFT JOIN correction AS earlier ON earlier.id =
           (SELECT max(id) FROM correction AS prior WHERE prior.reading_id = reading.id AND prior.id < correction.id)
       WHERE reading.student_id = ? AND reading.reread = 0
       ORDER BY correction.id`,
    )
    .all(scope.studentId);
  return rows.map(({ kind, value, typed, kindBefore, valueBefore, typedBefore, ...row }) => ({
    ...row,
    before: { kind: kindBefore, value: valueBefore, typed: typedBefore },
    after: { kind, value, typed },
  }));
}
