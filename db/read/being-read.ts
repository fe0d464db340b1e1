import type { Database } from "../client";

/** Whether swings of one of these sessions are being read back. */
export function isBeingRead(db: Database, sessionIds: readonly string[]): boolean {
  return (
    db.sqlite
      .prepare(
        `SELECT 1 FROM read_back_item JOIN read_back ON read_back.id = read_back_item.read_back_id
           JOIN swing ON swing.id = read_back_item.swing_id
         WHERE finished_at IS NULL AND dropped_at IS NULL
           AND swing.session_id IN (SELECT value FROM json_each(?))`,
      )
      .get(JSON.stringify(sessionIds)) !== undefined
  );
}
