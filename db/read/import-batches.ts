import { and, desc, eq, isNull, sql } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { importBatch } from "../schema";
import { seenBy, VISIBLE_SQL } from "./visible";

/** One import as kept; `answers` lists what was changed, guessed or set aside, opaque here. */
export type ImportBatch = Omit<typeof importBatch.$inferSelect, "academyId">;

const fields = {
  id: importBatch.id,
  fileName: importBatch.fileName,
  contentHash: importBatch.contentHash,
  form: importBatch.form,
  rows: importBatch.rows,
  readings: importBatch.readings,
  answers: importBatch.answers,
  createdAt: importBatch.createdAt,
  door: importBatch.door,
  undoneAt: importBatch.undoneAt,
  undoneBy: importBatch.undoneBy,
  userId: importBatch.userId,
};

/** A director sees every import of the academy; anybody else those that they made. */
function mine(scope: AcademyScope) {
  const here = eq(importBatch.academyId, scope.academyId);
  return scope.students === "all" || scope.userId === null ? here : and(here, eq(importBatch.userId, scope.userId));
}

/** Latest first. */
export function readImportBatches(db: Database, scope: AcademyScope): ImportBatch[] {
  return db.orm
    .select(fields)
    .from(importBatch)
    .where(mine(scope))
    .orderBy(desc(importBatch.createdAt), desc(sql`rowid`))
    .all();
}

/** The import that brought this very content and wasn't taken back, if there was one. */
export function readImportBatch(db: Database, scope: AcademyScope, contentHash: string): ImportBatch | undefined {
  return db.orm
    .select(fields)
    .from(importBatch)
    .where(
      and(
        eq(importBatch.academyId, scope.academyId),
        eq(importBatch.contentHash, contentHash),
        isNull(importBatch.undoneAt),
      ),
    )
    .get();
}

/** The import of that id; undefined: there is none in this academy. */
export function readImportBatchById(db: Database, scope: AcademyScope, id: string): ImportBatch | undefined {
  return db.orm
    .select(fields)
    .from(importBatch)
    .where(and(mine(scope), eq(importBatch.id, id)))
    .get();
}

/** What an import brought of one student. */
export interface ImportedStudent {
  readonly id: string;
  readonly alias: string;
  /** 1: the import added the student. */
  readonly isNew: 0 | 1;
  /** Sessions that hold some of its readings. */
  readonly sessions: number;
  readonly readings: number;
}

/** Everybody of whom an import brought something, by alias; nobody once it is undone. */
export function readImportedStudents(db: Database, scope: AcademyScope, batchId: string): ImportedStudent[] {
  return db.sqlite
    .prepare<[{ batch: string; academy: string; seen: string | null }], ImportedStudent>(
      `SELECT student.id, student.alias, coalesce(student.batch_id = :batch, 0) AS isNew,
         coalesce(brought.sessions, 0) AS sessions, coalesce(brought.readings, 0) AS readings
       FROM student LEFT JOIN (
         SELECT student_id, count(DISTINCT session_id) AS sessions, count(*) AS readings
         FROM reading WHERE batch_id = :batch GROUP BY student_id) brought ON brought.student_id = student.id
       WHERE student.academy_id = :academy AND ${VISIBLE_SQL} AND (student.batch_id = :batch OR brought.readings > 0)
       ORDER BY student.alias`,
    )
    .all({ batch: batchId, academy: scope.academyId, ...seenBy(scope) });
}
