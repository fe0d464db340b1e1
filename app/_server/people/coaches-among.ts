import type { Database } from "@/db/client";
import { readPeople } from "@/db/read/people";

/** Those of some ids who coach in an academy now. */
export function coachesAmong(db: Database, academyId: string, ids: readonly string[]): readonly string[] {
  return readPeople(db, academyId).flatMap(({ userId, roles, endedAt }) =>
    endedAt === null && roles.includes("coach") && ids.includes(userId) ? [userId] : [],
  );
}
