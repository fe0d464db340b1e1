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

/** What the kept list of a day rests on; undefined: none is kept. */
export function readRosterDigest(
  db: Database,
  scope: AcademyScope,
  asOf: string,
  policyVersion: string,
): string | undefined {
  return db.sqlite
    .prepare<[string, string, string], string>(
      "SELECT input_digest FROM roster_list WHERE academy_id = ? AND as_of = ? AND policy_version = ?",
    )
    .pluck()
    .get(scope.academyId, asOf, policyVersion);
}
