import { asc, eq } from "drizzle-orm";
import { readCountKey } from "@/lib/domain/count-key";
import { parsePhraseCoding, type RecordedCoding } from "@/lib/domain/phrase-coding";
import type { Database } from "../client";
import { session, student } from "../schema";
import { noteCoding } from "../schema-entry";
import type { AcademyKey } from "./club-groups";
import { visible } from "./visible";

// What was said of one session's note is seen by whoever may see the session.
function hidesFrom(db: Database, scope: AcademyKey): (phrase: string) => boolean {
  if ("studentId" in scope || scope.students === "all") return () => false;
  const rows = db.orm
    .select({ id: session.id })
    .from(session)
    .innerJoin(student, eq(student.id, session.studentId))
    .where(visible(scope))
    .all();
  const seen = new Set(rows.map((row) => row.id));
  return (phrase) => {
    const key = readCountKey(phrase);
    return key?.scope === "note" && !seen.has(key.sessionId);
  };
}

/** Every coding that the academy recorded, oldest first; the latest of a phrase holds. */
export function readNoteCodings(db: Database, scope: AcademyKey): RecordedCoding[] {
  const hides = hidesFrom(db, scope);
  return db.orm
    .select()
    .from(noteCoding)
    .where(eq(noteCoding.academyId, scope.academyId))
    .orderBy(asc(noteCoding.id))
    .all()
    .filter(({ phrase }) => !hides(phrase))
    .map(({ id, phrase, coding, who, recordedAt }) => {
      const read = parsePhraseCoding(coding);
      if (!read) throw new Error(`the coding ${id} can't be read`);
      return { phrase, coding: read, who, recordedAt };
    });
}
