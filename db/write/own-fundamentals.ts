import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { OwnFundamental } from "../read/own-fundamentals";
import { ownFundamental } from "../schema-work";

/** `exists`: the academy has a fundamental of that id; it stays as it is. */
export function insertOwnFundamental(
  db: Database,
  scope: AcademyScope,
  { id, definition }: OwnFundamental,
  now: string,
): { readonly kind: "inserted" | "exists" } {
  const { changes } = db.orm
    .insert(ownFundamental)
    .values({ academyId: scope.academyId, id, definition, createdAt: now })
    .onConflictDoNothing()
    .run();
  return { kind: changes === 1 ? "inserted" : "exists" };
}
