import { eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import type { Academy } from "../read/academies";
import { academy } from "../schema";

/** A new academy; how long what is kept there follows the standing rules until somebody says otherwise. */
export type NewAcademyRow = typeof academy.$inferInsert;

export function insertAcademy(db: Database, row: NewAcademyRow): void {
  db.orm.insert(academy).values(row).run();
}

/** What an owner may change of an academy. */
export type AcademyChange = Pick<Academy, "name" | "ownerName" | "zone" | "seasonStart">;

/** Changes an academy; with another season's start every student is judged anew. */
export function updateAcademy(db: Database, scope: AcademyScope, change: AcademyChange): void {
  inTransaction(db, () => {
    const before = db.orm.select().from(academy).where(eq(academy.id, scope.academyId)).get();
    db.orm.update(academy).set(change).where(eq(academy.id, scope.academyId)).run();
    if (before?.seasonStart !== change.seasonStart)
      db.sqlite.prepare("UPDATE student SET revision = revision + 1 WHERE academy_id = ?").run(scope.academyId);
  });
}

/** How long an academy keeps records and opens links, and from which age a student's own consent is asked for. */
export function updateKeeping(
  db: Database,
  scope: AcademyScope,
  keeping: Pick<Academy, "keepMonths" | "linkDays" | "ownConsentAge">,
): void {
  db.orm.update(academy).set(keeping).where(eq(academy.id, scope.academyId)).run();
}
