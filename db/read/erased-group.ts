import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";

declare const together: unique symbol;

/**
 * A student and whoever turned out to be the same one: they are erased together. Found only by the gate's proof, or, before
 * anybody is let in, by the list of those who were erased already.
 */
export type ErasedGroup = {
  readonly academyId: string;
  readonly studentIds: readonly string[];
  readonly aliases: readonly string[];
  readonly [together]: "erased";
};

interface Row {
  readonly id: string;
  readonly academyId: string;
  readonly alias: string;
}

function readGroup(db: Database, academyId: string, studentIds: readonly string[]): ErasedGroup {
  const rows = db.sqlite
    .prepare<[{ ids: string; academyId: string }], Row>(
      `WITH RECURSIVE one (id) AS (
         SELECT value FROM json_each(:ids)
         UNION SELECT student.id FROM student JOIN one ON student.merged_into = one.id)
       SELECT student.id, academy_id AS academyId, alias FROM student JOIN one ON one.id = student.id
       WHERE academy_id = :academyId ORDER BY student.id`,
    )
    .all({ ids: JSON.stringify(studentIds), academyId });
  return {
    academyId,
    studentIds: rows.map(({ id }) => id),
    aliases: [...new Set(rows.map(({ alias }) => alias))],
  } as unknown as ErasedGroup;
}

/** Whoever goes with a student. */
export function readErasedGroup(db: Database, scope: StudentScope): ErasedGroup {
  return readGroup(db, scope.academyId, [scope.studentId]);
}

/** Students on file who were erased already, each with whoever goes with them; whoever turned out to be another comes after the other. */
export function readListedGroups(
  db: Database,
  isListed: (student: { readonly academyId: string; readonly studentId: string }) => boolean,
): ErasedGroup[] {
  return db.sqlite
    .prepare<[], Row>("SELECT id, academy_id AS academyId, alias FROM student ORDER BY merged_into IS NOT NULL, id")
    .all()
    .filter(({ id, academyId }) => isListed({ academyId, studentId: id }))
    .map(({ id, academyId }) => readGroup(db, academyId, [id]));
}
