import { asc, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { ownFundamental } from "../schema-work";

/** An academy's own fundamental; the definition is opaque here. */
export interface OwnFundamental {
  readonly id: string;
  readonly definition: string;
}

export function readOwnFundamentals(db: Database, scope: AcademyScope): OwnFundamental[] {
  return db.orm
    .select({ id: ownFundamental.id, definition: ownFundamental.definition })
    .from(ownFundamental)
    .where(eq(ownFundamental.academyId, scope.academyId))
    .orderBy(asc(ownFundamental.id))
    .all();
}
