import type { ArchivedCarried } from "@/lib/domain/carried-look";
import type { Database } from "../client";
import { carriedLook } from "../schema-privacy";
import { event } from "../schema-work";
import type { Stamp } from "./students";

/** Who reads the films of imported students from a day on. */
export interface NewReader {
  readonly name: string;
  readonly day: string;
}

/** Whose looks are written, with which import, and where its sessions came to lie. */
export interface CarriedEntry {
  readonly studentId: string;
  readonly batchId: string;
  readonly stamp: Stamp;
  /** Ids here by the ids of the archive. */
  readonly sessions: ReadonlyMap<string, string>;
  /** Null: nothing says that readers change. */
  readonly reader: NewReader | null;
}

/**
 * Keeps looks as other academies said them, and dates the change of reader. To be called inside a transaction.
 *
 * @throws RangeError on a look after a session that the archive doesn't hold
 */
export function enterCarried(db: Database, entry: CarriedEntry, carried: readonly ArchivedCarried[]): void {
  const { studentId, batchId, stamp, sessions, reader } = entry;
  for (const { sessionId: theirs, ...said } of carried) {
    const sessionId = sessions.get(theirs);
    if (sessionId === undefined) throw new RangeError(`the archive names ${theirs} and doesn't hold it`);
    db.orm
      .insert(carriedLook)
      .values({ ...said, sessionId, studentId, batchId })
      .run();
  }
  if (reader === null) return;
  const happened = { kind: "reader-change", day: reader.day, note: reader.name, rebaselines: "" } as const;
  db.orm
    .insert(event)
    .values({ id: stamp.newId(), studentId, batchId, ...happened, who: reader.name, recordedAt: stamp.now })
    .run();
}
