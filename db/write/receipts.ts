import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { Receipt } from "../read/receipts";
import { formReceipt } from "../schema-entry";

/** @throws Error when the key has a receipt: the transaction around it, with what was saved, is undone */
export function insertReceipt(db: Database, scope: AcademyScope, receipt: Receipt): void {
  db.orm
    .insert(formReceipt)
    .values({ academyId: scope.academyId, ...receipt })
    .run();
}
