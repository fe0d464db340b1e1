import type { StudentScope } from "@/lib/domain/scope";
import type { StudentEvent } from "@/lib/domain/student";
import { type Database, inTransaction } from "../client";
import { joinWords } from "../joined-words";
import { event } from "../schema-work";
import { updateRevision } from "./students";

export function insertEvent(db: Database, scope: StudentScope, happened: StudentEvent): void {
  const { id, kind, day, note, rebaselines } = happened;
  inTransaction(db, () => {
    updateRevision(db, scope);
    db.orm
      .insert(event)
      .values({ id, studentId: scope.studentId, kind, day, note, rebaselines: joinWords(rebaselines) })
      .run();
  });
}
