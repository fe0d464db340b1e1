import { and, eq, max } from "drizzle-orm";
import type { Unit } from "@/lib/domain/fundamental";
import type { MeasuredReaderError, RereadLevel, RereadPlace } from "@/lib/domain/reread";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { readerErrorFit, rereadDraw } from "../schema-rereads";

/** A draw that is ready to be kept. */
export interface NewRereadDraw {
  readonly id: string;
  readonly reader: string;
  readonly level: RereadLevel;
  readonly who: string;
  readonly day: string;
  readonly drawnAt: string;
  /** In the order of reading. */
  readonly items: readonly (RereadPlace & { readonly filmReference: string })[];
}

/** One value read again. */
export interface RereadValue {
  readonly place: number;
  /** Handedness-neutral; null: not measurable this time. */
  readonly value: number | null;
  readonly typed: string;
  readonly unit: Unit;
}

/** What came of values: written, put right, or as they were. */
export interface RereadCounts {
  readonly written: number;
  readonly corrected: number;
}

/** @throws Error on an item whose student isn't of the academy; nothing is written */
export function insertRereadDraw(db: Database, scope: AcademyScope, drawn: NewRereadDraw): void {
  const { items, ...row } = drawn;
  inTransaction(db, () => {
    db.orm
      .insert(rereadDraw)
      .values({ academyId: scope.academyId, sameAs: null, ...row })
      .run();
    const insert = db.sqlite.prepare<[Record<string, unknown>]>(
      `INSERT INTO reread_item (draw_id, place, student_id, session_id, swing_id, fundamental_id, film_reference)
       SELECT :drawId, :place, student.id, session.id, swing.id, :fundamentalId, :filmReference
       FROM student JOIN session ON session.student_id = student.id JOIN swing ON swing.session_id = session.id
       WHERE student.id = :studentId AND session.id = :sessionId AND swing.id = :swingId
         AND student.academy_id = :academyId`,
    );
    items.forEach((item, at) => {
      const { changes } = insert.run({ ...item, drawId: row.id, place: at + 1, academyId: scope.academyId });
      if (changes !== 1) throw new Error(`no such swing in this academy: ${item.swingId}`);
    });
  });
}

/** The same items in the same order for a second reader. `not-there`: no such draw; nothing was written. */
export function insertSameDraw(
  db: Database,
  scope: AcademyScope,
  twin: Omit<NewRereadDraw, "items" | "level"> & { readonly sameAs: string },
): { readonly kind: "inserted" | "not-there" } {
  return inTransaction(db, () => {
    const original = db.orm
      .select({ level: rereadDraw.level })
      .from(rereadDraw)
      .where(and(eq(rereadDraw.id, twin.sameAs), eq(rereadDraw.academyId, scope.academyId)))
      .get();
    if (!original) return { kind: "not-there" };
    db.orm
      .insert(rereadDraw)
      .values({ academyId: scope.academyId, level: original.level, ...twin })
      .run();
    db.sqlite
      .prepare<[string, string]>(
        `INSERT INTO reread_item (draw_id, place, student_id, session_id, swing_id, fundamental_id, film_reference)
         SELECT ?, place, student_id, session_id, swing_id, fundamental_id, film_reference
         FROM reread_item WHERE draw_id = ? ORDER BY place`,
      )
      .run(twin.id, twin.sameAs);
    return { kind: "inserted" };
  });
}

interface OpenItem {
  readonly swingId: number;
  readonly studentId: string;
  readonly sessionId: string;
  readonly fundamentalId: string;
  readonly reader: string;
  readonly readingId: number | null;
  readonly typed: string | null;
}

/**
 * Keeps values of an open draw beside the first readings, which stay as they are; a value typed otherwise later, while the
 * draw is open, is a correction with who and why. No verdict rests on them, so no analysis goes stale.
 */
export function insertRereadValues(
  db: Database,
  scope: AcademyScope,
  drawId: string,
  values: readonly RereadValue[],
  { now, who, why }: { readonly now: string; readonly who: string; readonly why: string },
): RereadCounts {
  return inTransaction(db, () => {
    const itemAt = db.sqlite.prepare<[string, string, number], OpenItem>(
      `SELECT reread_item.swing_id AS swingId, reread_item.student_id AS studentId, reread_item.session_id AS sessionId,
         reread_item.fundamental_id AS fundamentalId, reread_draw.reader, reread_item.reading_id AS readingId,
         coalesce((SELECT correction.typed FROM correction WHERE correction.reading_id = reading.id
           ORDER BY correction.id DESC LIMIT 1), reading.typed) AS typed
       FROM reread_item JOIN reread_draw ON reread_draw.id = reread_item.draw_id
         LEFT JOIN reading ON reading.id = reread_item.reading_id
       WHERE reread_draw.academy_id = ? AND reread_draw.id = ? AND finished_on IS NULL AND place = ?`,
    );
    const read = db.sqlite.prepare<[Record<string, unknown>]>(
      `INSERT INTO reading (student_id, fundamental_id, session_id, swing_id, reader, reread, value, typed, unit,
         sign_rule, entered_at)
       SELECT :studentId, :fundamentalId, :sessionId, :swingId, :reader, coalesce(max(reread), 0) + 1, :value, :typed,
         :unit, 'neutral', :now
       FROM reading WHERE swing_id = :swingId AND fundamental_id = :fundamentalId AND reader = :reader`,
    );
    const link = db.sqlite.prepare<[number, string, number]>(
      "UPDATE reread_item SET reading_id = ? WHERE draw_id = ? AND place = ?",
    );
    const correct = db.sqlite.prepare<[Record<string, unknown>]>(
      `INSERT INTO correction (reading_id, value, typed, who, why, corrected_at)
       VALUES (:readingId, :value, :typed, :who, :why, :now)`,
    );
    let [written, corrected] = [0, 0];
    for (const { place, value, typed, unit } of values) {
      const item = itemAt.get(scope.academyId, drawId, place);
      if (!item || item.typed === typed) continue;
      const { typed: _typed, readingId, ...where } = item;
      if (readingId !== null) {
        corrected += correct.run({ readingId, value, typed, who, why, now }).changes;
        continue;
      }
      const { lastInsertRowid } = read.run({ ...where, value, typed, unit, now });
      written += link.run(Number(lastInsertRowid), drawId, place).changes;
    }
    return { written, corrected };
  });
}

/** A draw's end, and the errors fitted with it. */
export interface FinishedDraw {
  readonly day: string;
  readonly now: string;
}

/** `not-open`: no such draw, or finished before; nothing was written. */
export function updateDrawFinished(
  db: Database,
  scope: AcademyScope,
  drawId: string,
  { day, now }: FinishedDraw,
): { readonly kind: "finished" | "not-open" } {
  const { changes } = db.sqlite
    .prepare<[string, string, string, string]>(
      `UPDATE reread_draw SET finished_on = ?, finished_at = ?
       WHERE academy_id = ? AND id = ? AND finished_on IS NULL
         AND EXISTS (SELECT 1 FROM reread_item WHERE draw_id = reread_draw.id AND reading_id IS NOT NULL)`,
    )
    .run(day, now, scope.academyId, drawId);
  return { kind: changes === 1 ? "finished" : "not-open" };
}

/**
 * Adds a fitted error under the next number of its fundamental; there is no way to change one. Students filmed on its first
 * day or later are to be judged anew; no earlier look changes.
 */
export function insertReaderError(
  db: Database,
  scope: AcademyScope,
  fit: Omit<MeasuredReaderError, "number">,
  fittedAt: string,
): MeasuredReaderError {
  return inTransaction(db, () => {
    const { academyId } = scope;
    const last = db.orm
      .select({ number: max(readerErrorFit.number) })
      .from(readerErrorFit)
      .where(and(eq(readerErrorFit.academyId, academyId), eq(readerErrorFit.fundamentalId, fit.fundamentalId)))
      .get();
    const row = { ...fit, number: (last?.number ?? 0) + 1 };
    db.orm
      .insert(readerErrorFit)
      .values({ academyId, fittedAt, ...row })
      .run();
    db.sqlite
      .prepare<[string, string]>(
        `UPDATE student SET revision = revision + 1
         WHERE academy_id = ? AND EXISTS (SELECT 1 FROM session WHERE student_id = student.id AND day >= ?)`,
      )
      .run(academyId, fit.fromDay);
    return row;
  });
}
