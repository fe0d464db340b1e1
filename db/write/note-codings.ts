import { and, desc, eq } from "drizzle-orm";
import type { RecordedCoding } from "@/lib/domain/phrase-coding";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { noteCoding } from "../schema-entry";

/**
 * Adds what the academy says of a phrase; earlier codings stay as its history. It is no evidence: no analysis rests on it.
 *
 * @returns `unchanged` where that was said last: nothing was written
 */
export function insertNoteCoding(db: Database, scope: AcademyScope, said: RecordedCoding): "recorded" | "unchanged" {
  return inTransaction(db, () => {
    const { academyId } = scope;
    const { phrase, who, recordedAt } = said;
    const coding = JSON.stringify(said.coding);
    const latest = db.orm
      .select({ coding: noteCoding.coding })
      .from(noteCoding)
      .where(and(eq(noteCoding.academyId, academyId), eq(noteCoding.phrase, phrase)))
      .orderBy(desc(noteCoding.id))
      .get();
    if ((latest?.coding ?? JSON.stringify({ as: "as-read" })) === coding) return "unchanged";
    db.orm.insert(noteCoding).values({ academyId, phrase, coding, who, recordedAt }).run();
    return "recorded";
  });
}
