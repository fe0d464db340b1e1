import type { ErasureReason } from "@/lib/domain/erasure";
import type { Naming } from "@/lib/domain/named-in";
import { type Database, inTransaction } from "../client";
import type { ErasedGroup } from "../read/erased-group";
import { ROWS_OF_STUDENT, readBatchesOf, readNaming, type StudentRowCounts } from "../read/student-rows";
import { erasure } from "../schema-privacy";
import { type ScrubCounts, type ScrubDoor, scrubNames } from "./scrub-names";

/** What of an erasure stays on file, and what it needs from outside. */
export interface EraseDoor extends ScrubDoor {
  /** Id of the row that stays. */
  readonly erasureId: string;
  readonly now: string;
  readonly who: string;
  readonly reason: ErasureReason;
  /** Called last, when every row is gone and before that is so for good; what it throws undoes all. */
  readonly beforeCommit: (naming: Naming) => void;
}

/** What an erasure took. */
export interface Erased {
  readonly rows: StudentRowCounts;
  readonly elsewhere: ScrubCounts;
}

/** Tables with rows that bear an import. */
const BATCHED = [
  ...["student", "session", "capture", "stated_capture_sd", "swing", "reading"],
  ...["practice", "event", "drill_assignment", "consent", "carried_look"],
] as const;

function deleteRows(db: Database, ids: string): StudentRowCounts {
  const counts = Object.entries(ROWS_OF_STUDENT).map(([table, mine]) => [
    table,
    db.sqlite.prepare<[{ ids: string }]>(`DELETE FROM ${table} WHERE ${mine}`).run({ ids }).changes,
  ]);
  return Object.fromEntries(counts);
}

/** Draws of which nothing is left. */
function deleteEmptyDraws(db: Database, draws: readonly string[]): void {
  db.sqlite
    .prepare<[string]>(
      `DELETE FROM reread_draw WHERE id IN (SELECT value FROM json_each(?))
         AND NOT EXISTS (SELECT 1 FROM reread_item WHERE draw_id = reread_draw.id)`,
    )
    .run(JSON.stringify(draws));
}

function readDraws(db: Database, ids: string): string[] {
  return db.sqlite
    .prepare<[{ ids: string }], string>(`SELECT DISTINCT draw_id FROM reread_item WHERE ${ROWS_OF_STUDENT.reread_item}`)
    .pluck()
    .all({ ids });
}

/** An import that brought nothing but what is gone is gone too, with the name and digest of its file. */
function deleteEmptyBatches(db: Database, batches: readonly string[]): void {
  if (batches.length === 0) return;
  const ids = JSON.stringify(batches);
  const query = BATCHED.map((table) => `SELECT batch_id FROM ${table} WHERE batch_id IN batch`).join(" UNION ");
  const used = db.sqlite
    .prepare<[string], string>(`WITH batch AS (SELECT value FROM json_each(?)) ${query}`)
    .pluck()
    .all(ids);
  const empty = JSON.stringify(batches.filter((id) => !used.includes(id)));
  db.sqlite
    .prepare<[{ ids: string }]>(
      `DELETE FROM draft WHERE EXISTS (SELECT 1 FROM json_each(:ids)
         WHERE draft.id IN (value, 'conflicts:' || value) OR substr(draft.id, 1, length(value) + 1) = value || '.')`,
    )
    .run({ ids: empty });
  db.sqlite.prepare<[string]>("DELETE FROM import_batch WHERE id IN (SELECT value FROM json_each(?))").run(empty);
}

/**
 * Erases a student, and whoever turned out to be the same one, whole or not at all: every row that is theirs, and what names
 * them in the rows of others. A count stays, by which nobody can be found. Models and readers' errors that were fitted stay.
 *
 * @returns null: nobody of the group is on file
 */
export function eraseStudent(db: Database, group: ErasedGroup, door: EraseDoor): Erased | null {
  return inTransaction(db, () => {
    const ids = JSON.stringify(group.studentIds);
    const naming = readNaming(db, group);
    const batches = readBatchesOf(db, group);
    const draws = readDraws(db, ids);
    db.sqlite
      .prepare<[{ ids: string }]>(`UPDATE student SET merged_into = NULL WHERE ${ROWS_OF_STUDENT.student}`)
      .run({ ids });
    const rows = deleteRows(db, ids);
    if (rows.student === 0) return null;
    deleteEmptyDraws(db, draws);
    deleteEmptyBatches(db, batches);
    const elsewhere = scrubNames(db, group, naming, door);
    db.orm
      .insert(erasure)
      .values({
        ...{ id: door.erasureId, academyId: group.academyId, erasedAt: door.now, who: door.who, reason: door.reason },
        ...{ sessions: rows.session, readings: rows.reading },
      })
      .run();
    door.beforeCommit(naming);
    return { rows, elsewhere };
  });
}
