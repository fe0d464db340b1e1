import type { ArchivedCarried } from "@/lib/domain/carried-look";
import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";

const COLUMNS = `session_id AS sessionId, fundamental_id AS fundamentalId, carried_look.club_group AS clubGroup,
  said_by AS saidBy, policy_version AS policyVersion, noise_model_name AS noiseModelName, body`;

/** A look as another academy said it, with the import that brought it. */
export type CarriedRow = ArchivedCarried & {
  /** ISO instant of the import. */
  readonly importedAt: string;
};

/** Looks of other academies in the order of their sessions; what is judged here reads none of them. */
export function readCarriedLooks(db: Database, { studentId }: StudentScope): CarriedRow[] {
  return db.sqlite
    .prepare<[string], CarriedRow>(
      `SELECT ${COLUMNS}, import_batch.created_at AS importedAt
       FROM carried_look JOIN session ON session.id = session_id JOIN import_batch ON import_batch.id = carried_look.batch_id
       WHERE carried_look.student_id = ? ORDER BY session.day, session.sequence, session_id, fundamental_id, carried_look.club_group`,
    )
    .all(studentId);
}

/** The same in the order of an archive. */
export function readArchivedCarried(db: Database, studentId: string): ArchivedCarried[] {
  return db.sqlite
    .prepare<[string], ArchivedCarried>(
      `SELECT ${COLUMNS} FROM carried_look JOIN session ON session.id = session_id
       WHERE carried_look.student_id = ?
       ORDER BY session.day, session.sequence, session_id, fundamental_id, carried_look.club_group`,
    )
    .all(studentId);
}
