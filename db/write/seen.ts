import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { Seen } from "../read/seen";
import { seen } from "../schema-work";

/** Keeps one pressing of "seen". */
export function insertSeen(db: Database, scope: AcademyScope, row: Seen): void {
  db.orm
    .insert(seen)
    .values({ ...row, academyId: scope.academyId })
    .run();
}
