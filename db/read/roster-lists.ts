import { and, eq } from "drizzle-orm";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { rosterList } from "../schema-work";

/** The roster's list of proved changes as of a day; the body is opaque here. */
export type RosterList = Omit<typeof rosterList.$inferSelect, "academyId">;

export function readRosterList(
  db: Database,
  scope: AcademyScope,
  asOf: string,
  policyVersion: string,
): RosterList | undefined {
  return db.orm
    .select({
      asOf: rosterList.asOf,
      policyVersion: rosterList.policyVersion,
      inputDigest: rosterList.inputDigest,
      body: rosterList.body,
    })
    .from(rosterList)
    .where(
      and(
        eq(rosterList.academyId, scope.academyId),
        eq(rosterList.asOf, asOf),
        eq(rosterList.policyVersion, policyVersion),
      ),
    )
    .get();
}
