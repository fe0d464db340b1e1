import { and, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { formReceipt } from "../schema-entry";

/** What was answered to a form that was saved; the outcome is opaque here. */
export type Receipt = Omit<typeof formReceipt.$inferSelect, "academyId">;

export function readReceipt(db: Database, scope: AcademyScope, key: string): Receipt | undefined {
  return db.orm
    .select({
      key: formReceipt.key,
      kind: formReceipt.kind,
      outcome: formReceipt.outcome,
      savedAt: formReceipt.savedAt,
    })
    .from(formReceipt)
    .where(and(eq(formReceipt.academyId, scope.academyId), eq(formReceipt.key, key)))
    .get();
}
