import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import type { RosterList } from "../read/roster-lists";
import { rosterList } from "../schema-work";

/** In place of an earlier one of the same day and policy. */
export function insertRosterList(db: Database, scope: AcademyScope, made: RosterList): void {
  const { asOf, policyVersion, inputDigest, body } = made;
  db.orm
    .insert(rosterList)
    .values({ academyId: scope.academyId, asOf, policyVersion, inputDigest, body })
    .onConflictDoUpdate({
      target: [rosterList.academyId, rosterList.asOf, rosterList.policyVersion],
      set: { inputDigest, body },
    })
    .run();
}
