import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { Seen } from "../read/seen";
import { seen } from "../schema-work";

export function insertSeen(db: Database, scope: AcademyScope, { viewer, seenAt, asOf, body }: Seen): void {
  db.orm.insert(seen).values({ academyId: scope.academyId, viewer, seenAt, asOf, body }).run();
}
