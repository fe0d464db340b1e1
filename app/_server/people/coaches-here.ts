import type { Database } from "@/db/client";
import { readPeople } from "@/db/read/people";
import type { Person } from "@/lib/domain/person";

/** Everybody who coaches in an academy now, by name. */
export function coachesHere(db: Database, academyId: string): readonly Person[] {
  return readPeople(db, academyId).filter(({ roles, endedAt }) => endedAt === null && roles.includes("coach"));
}
