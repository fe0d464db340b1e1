import { asc, eq } from "drizzle-orm";
import { parsePhraseCoding, type RecordedCoding } from "@/lib/domain/phrase-coding";
import type { Database } from "../client";
import { noteCoding } from "../schema-entry";
import type { AcademyKey } from "./club-groups";

/** Every coding that the academy recorded, oldest first; the latest of a phrase holds. */
export function readNoteCodings(db: Database, scope: AcademyKey): RecordedCoding[] {
  return db.orm
    .select()
    .from(noteCoding)
    .where(eq(noteCoding.academyId, scope.academyId))
    .orderBy(asc(noteCoding.id))
    .all()
    .map(({ id, phrase, coding, who, recordedAt }) => {
      const read = parsePhraseCoding(coding);
      if (!read) throw new Error(`the coding ${id} can't be read`);
      return { phrase, coding: read, who, recordedAt };
    });
}
