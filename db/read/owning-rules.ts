import { asc, eq } from "drizzle-orm";
import type { RecordedOwningRule } from "@/lib/domain/owning-rule";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { owningRule } from "../schema-plans";

/** Every owning rule that the academy set, in the order of entry. */
export function readOwningRules(db: Database, scope: AcademyScope): RecordedOwningRule[] {
  return db.orm
    .select({
      number: owningRule.number,
      from: owningRule.fromDay,
      sessions: owningRule.sessions,
      spanDays: owningRule.spanDays,
      restDays: owningRule.restDays,
      share: owningRule.share,
      shareLow: owningRule.shareLow,
      who: owningRule.who,
      why: owningRule.why,
      recordedAt: owningRule.recordedAt,
    })
    .from(owningRule)
    .where(eq(owningRule.academyId, scope.academyId))
    .orderBy(asc(owningRule.number))
    .all();
}
