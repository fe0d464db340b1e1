import { asc, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { ownFundamental } from "../schema-work";

/** An academy's own fundamental as kept; the definition is opaque here. */
export interface FiledFundamental {
  readonly id: string;
  readonly definition: string;
}

/** The academy's own fundamentals, by id. */
export function readOwnFundamentals(db: Database, scope: AcademyScope): FiledFundamental[] {
  return db.orm
    .select({ id: ownFundamental.id, definition: ownFundamental.definition })
    .from(ownFundamental)
    .where(eq(ownFundamental.academyId, scope.academyId))
    .orderBy(asc(ownFundamental.id))
    .all();
}
