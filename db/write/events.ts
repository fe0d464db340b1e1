import type { StudentScope } from "@/lib/domain/scope";
import type { StudentEvent } from "@/lib/domain/student";
import { type Database, inTransaction } from "../client";
import { joinWords } from "../joined-words";
import { event } from "../schema-work";
import { updateRevision } from "./students";

/** Adds what happened to a student; tracks that begin anew are judged anew. */
export function insertEvent(db: Database, scope: StudentScope, entered: StudentEvent): void {
  inTransaction(db, () => {
    updateRevision(db, scope);
    const { id, kind, day, note, rebaselines } = entered;
    db.orm
      .insert(event)
      .values({ id, studentId: scope.studentId, kind, day, note, rebaselines: joinWords(rebaselines) })
      .run();
  });
}
