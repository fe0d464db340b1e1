import type { Database } from "../client";
import { quietChanges, totalChanges } from "../quiet-writes";

/**
 * Differs as soon as anything was written into the file, by this connection or by another one; asking costs nothing. The
 * same stamp: what was read before still holds, but for what is written quietly (see `writeQuietly`).
 */
export function readFileStamp(db: Database): string {
  const byOthers = db.sqlite.pragma("data_version", { simple: true });
  return `${byOthers} ${totalChanges(db) - quietChanges(db)}`;
}
