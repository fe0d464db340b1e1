import { asc, eq } from "drizzle-orm";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { StudentScope } from "@/lib/domain/scope";
import { parseToldFindings, type Told } from "@/lib/domain/told";
import type { Database } from "../client";
import { told } from "../schema-plans";

/** Everything that a student's family was told, in the order in which it was, what was taken back too. */
export function readTold(db: Database, { studentId }: StudentScope): Told[] {
  return db.orm
    .select({
      id: told.id,
      clubGroup: told.clubGroup,
      kind: told.kind,
      text: told.text,
      findings: told.findings,
      day: told.day,
      who: told.who,
      recordedAt: told.recordedAt,
      voidedAt: told.voidedAt,
    })
    .from(told)
    .where(eq(told.studentId, studentId))
    .orderBy(asc(told.day), asc(told.recordedAt), asc(told.id))
    .all()
    .map((row) => ({
      ...row,
      clubGroup: row.clubGroup as ClubGroup,
      findings: parseToldFindings(row.findings),
    }));
}
