import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { ownFundamental } from "../schema-work";

/** Adds one of the academy's own fundamentals; its definition was checked by whoever calls. */
export function insertOwnFundamental(
  db: Database,
  scope: AcademyScope,
  row: { readonly id: string; readonly definition: string; readonly now: string },
): void {
  const { id, definition, now } = row;
  db.orm.insert(ownFundamental).values({ academyId: scope.academyId, id, definition, createdAt: now }).run();
}
