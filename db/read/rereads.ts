import { asc, eq } from "drizzle-orm";
import type { FundamentalId, View } from "@/lib/domain/fundamental";
import type {
  MeasuredReaderError,
  RereadCandidate,
  RereadDraw,
  RereadItem,
  RereadLevel,
  RereadPair,
} from "@/lib/domain/reread";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { readerErrorFit } from "../schema-rereads";
import { inForceSql } from "./in-force";
import { seenBy, VISIBLE_SQL } from "./visible";

/** A draw is seen by whoever may see every student in it: it names their films, and holds what was read of them. */
const DRAW_VISIBLE = `(@seen IS NULL OR NOT EXISTS (SELECT 1 FROM reread_item AS held
  WHERE held.draw_id = reread_draw.id AND held.student_id NOT IN (SELECT value FROM json_each(@seen))))`;

/** What such a query is given. */
type Seen = ReturnType<typeof seenBy>;

/** Whose first readings of which fundamental, and at which level they would be read again. */
export interface CandidateWish {
  readonly fundamentalId: FundamentalId;
  readonly view: View;
  readonly reader: string;
  readonly level: RereadLevel;
}

/** First readings of a reader that hold a value, of the whole academy; the values themselves stay here. */
export function readRereadCandidates(db: Database, scope: AcademyScope, wish: CandidateWish): RereadCandidate[] {
  const { columns, tables } = inForceSql("now");
  return db.sqlite
    .prepare<[CandidateWish & { academyId: string; seen: string | null }], RereadCandidate>(
      `SELECT reading.student_id AS studentId, session.id AS sessionId, reading.swing_id AS swingId,
         reading.fundamental_id AS fundamentalId,
         iif(correction.id IS NULL, reading.entered_at, correction.corrected_at) AS readAt,
         capture.film_reference AS filmReference,
         iif(EXISTS (
           SELECT 1 FROM reread_item JOIN reread_draw ON reread_draw.id = reread_item.draw_id
           WHERE reread_item.swing_id = reading.swing_id AND reread_item.fundamental_id = reading.fundamental_id
             AND reread_draw.reader = :reader AND reread_draw.level = :level
             AND (reread_item.reading_id IS NOT NULL OR reread_draw.finished_on IS NULL)), 'yes', 'no') AS again
       FROM ${tables}
         JOIN student ON student.id = reading.student_id
         LEFT JOIN capture ON capture.session_id = session.id AND capture.view = :view
       WHERE student.academy_id = :academyId AND ${VISIBLE_SQL} AND reading.fundamental_id = :fundamentalId
         AND reading.reader = :reader AND ${columns} IS NOT NULL
       ORDER BY reading.id`,
    )
    .all({ ...wish, academyId: scope.academyId, ...seenBy(scope) });
}

/** First readings of a fundamental that hold a value, and those among them whose film has no reference. */
export function readFilmReach(
  db: Database,
  scope: AcademyScope,
  wish: Pick<CandidateWish, "fundamentalId" | "view">,
): { readonly readings: number; readonly noReference: number } {
  const { columns, tables } = inForceSql("now");
  const row = db.sqlite
    .prepare<[typeof wish & { academyId: string; seen: string | null }], { readings: number; found: number }>(
      `SELECT count(*) AS readings, count(capture.film_reference) AS found
       FROM ${tables}
         JOIN student ON student.id = reading.student_id
         LEFT JOIN capture ON capture.session_id = session.id AND capture.view = :view
       WHERE student.academy_id = :academyId AND ${VISIBLE_SQL} AND reading.fundamental_id = :fundamentalId AND ${columns} IS NOT NULL`,
    )
    .get({ ...wish, academyId: scope.academyId, ...seenBy(scope) });
  return { readings: row?.readings ?? 0, noReference: (row?.readings ?? 0) - (row?.found ?? 0) };
}

/** Everybody who has read a film first, by name. */
export function readFirstReaders(db: Database, scope: AcademyScope): string[] {
  return db.sqlite
    .prepare<[string], string>(
      `SELECT DISTINCT session.reader FROM session JOIN student ON student.id = session.student_id
       WHERE student.academy_id = ? ORDER BY session.reader`,
    )
    .pluck()
    .all(scope.academyId);
}

/** Every draw, newest first. */
export function readRereadDraws(db: Database, scope: AcademyScope): RereadDraw[] {
  return db.sqlite
    .prepare<[string, Seen], RereadDraw>(
      `SELECT reread_draw.id, reread_draw.reader, level, same_as AS sameAs, who, day, finished_on AS finishedOn,
         count(reread_item.place) AS items, count(reread_item.reading_id) AS read
       FROM reread_draw LEFT JOIN reread_item ON reread_item.draw_id = reread_draw.id
       WHERE academy_id = ? AND ${DRAW_VISIBLE} GROUP BY reread_draw.id ORDER BY drawn_at DESC, reread_draw.id`,
    )
    .all(scope.academyId, seenBy(scope));
}

/** The items of a draw in the order of reading, with what was typed this time and with nothing that was read before. */
export function readRereadItems(db: Database, scope: AcademyScope, drawId: string): RereadItem[] {
  return db.sqlite
    .prepare<[string, string, Seen], RereadItem>(
      `SELECT place, reread_item.fundamental_id AS fundamentalId, film_reference AS filmReference, swing.number AS swing,
         coalesce((SELECT correction.typed FROM correction WHERE correction.reading_id = reading.id
           ORDER BY correction.id DESC LIMIT 1), reading.typed) AS typed
       FROM reread_item
         JOIN reread_draw ON reread_draw.id = reread_item.draw_id
         JOIN swing ON swing.id = reread_item.swing_id
         LEFT JOIN reading ON reading.id = reread_item.reading_id
       WHERE reread_draw.academy_id = ? AND reread_draw.id = ? AND ${DRAW_VISIBLE} ORDER BY place`,
    )
    .all(scope.academyId, drawId, seenBy(scope));
}

/** Whose film each place of a draw is, by the place; for whoever asks whether it may be read, and for no page. */
export function readRereadStudents(db: Database, scope: AcademyScope, drawId: string): ReadonlyMap<number, string> {
  const rows = db.sqlite
    .prepare<[string, string, Seen], { place: number; studentId: string }>(
      `SELECT place, session.student_id AS studentId
       FROM reread_item
         JOIN reread_draw ON reread_draw.id = reread_item.draw_id
         JOIN swing ON swing.id = reread_item.swing_id
         JOIN session ON session.id = swing.session_id
       WHERE reread_draw.academy_id = ? AND reread_draw.id = ? AND ${DRAW_VISIBLE}`,
    )
    .all(scope.academyId, drawId, seenBy(scope));
  return new Map(rows.map(({ place, studentId }) => [place, studentId]));
}

/** A pair with the fundamental and the draw that it belongs to. */
export type FiledPair = RereadPair & { readonly fundamentalId: FundamentalId; readonly drawId: string };

/** The pairs of finished draws; what couldn't be measured again, or is not measurable any more, makes none. */
export function readRereadPairs(db: Database, scope: AcademyScope): FiledPair[] {
  const { columns, tables } = inForceSql("now");
  return db.sqlite
    .prepare<[string, Seen], FiledPair>(
      `SELECT reread_item.draw_id AS drawId, reread_item.fundamental_id AS fundamentalId, reread_draw.level,
         session.reader AS firstReader, reread_draw.reader AS reader, ${columns} AS first,
         iif(mend.id IS NULL, again.value, mend.value) AS again
       FROM reread_draw
         JOIN reread_item ON reread_item.draw_id = reread_draw.id
         JOIN reading AS again ON again.id = reread_item.reading_id
         LEFT JOIN correction AS mend ON mend.id =
           (SELECT max(id) FROM correction AS any_mend WHERE any_mend.reading_id = again.id)
         CROSS JOIN ${tables}
       WHERE reread_draw.academy_id = ? AND ${DRAW_VISIBLE} AND reread_draw.finished_on IS NOT NULL
         AND reading.swing_id = reread_item.swing_id AND reading.fundamental_id = reread_item.fundamental_id
         AND ${columns} IS NOT NULL AND iif(mend.id IS NULL, again.value, mend.value) IS NOT NULL
       ORDER BY reread_draw.drawn_at, reread_draw.id, place`,
    )
    .all(scope.academyId, seenBy(scope));
}

/** Every fit, by fundamental and number. */
export function readReaderErrors(db: Database, scope: AcademyScope): MeasuredReaderError[] {
  return db.orm
    .select({
      fundamentalId: readerErrorFit.fundamentalId,
      number: readerErrorFit.number,
      fromDay: readerErrorFit.fromDay,
      readerSd: readerErrorFit.readerSd,
      offsetSd: readerErrorFit.offsetSd,
      pairs: readerErrorFit.pairs,
      shared: readerErrorFit.shared,
      version: readerErrorFit.version,
    })
    .from(readerErrorFit)
    .where(eq(readerErrorFit.academyId, scope.academyId))
    .orderBy(asc(readerErrorFit.fundamentalId), asc(readerErrorFit.number))
    .all();
}
