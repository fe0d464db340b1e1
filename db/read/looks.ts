import { asc, eq } from "drizzle-orm";
import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { session } from "../schema";
import { lookNoise } from "../schema-work";

/** The name of the noise model with which the look after a session is said. */
export interface LookNoise {
  readonly sessionId: string;
  readonly fundamentalId: string;
  /** The club group in which it is said. */
  readonly clubGroup: string;
  readonly noiseModelName: string;
}

/** In the order of the sessions. */
export function readLookNoise(db: Database, scope: StudentScope): LookNoise[] {
  return db.orm
    .select({
      sessionId: lookNoise.sessionId,
      fundamentalId: lookNoise.fundamentalId,
      clubGroup: lookNoise.clubGroup,
      noiseModelName: lookNoise.noiseModelName,
    })
    .from(lookNoise)
    .innerJoin(session, eq(session.id, lookNoise.sessionId))
    .where(eq(lookNoise.studentId, scope.studentId))
    .orderBy(asc(session.day), asc(session.sequence), asc(lookNoise.clubGroup), asc(lookNoise.fundamentalId))
    .all();
}
