import type { ToldOfStudent } from "@/lib/domain/archive-told";
import type { StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";

/** The student and everybody who turned out to be them: what was said of those stays under their names. */
const ONE = `WITH RECURSIVE one (id) AS (
  SELECT id FROM student WHERE id = :studentId AND academy_id = :academyId
  UNION SELECT student.id FROM student JOIN one ON student.merged_into = one.id)`;

/** One table each: what of it names the student, oldest first. `:studentId` is who the archive is of. */
const QUERIES: Readonly<Record<keyof ToldOfStudent, string>> = {
  charges: `${ONE} SELECT :studentId AS studentId, coach.name AS coach, kind, giver.name AS "from", charge.note,
      from_day AS fromDay, until_day AS untilDay, who, recorded_at AS recordedAt, ended_at AS endedAt, ended_by AS endedBy
    FROM charge JOIN user AS coach ON coach.id = coach_id LEFT JOIN user AS giver ON giver.id = from_coach_id
    WHERE student_id IN (SELECT id FROM one) ORDER BY from_day, recorded_at, charge.id`,
  familyLinks: `${ONE} SELECT :studentId AS studentId, id, label, who, made_at AS madeAt, expires_at AS expiresAt,
      renewed_at AS renewedAt, renewed_by AS renewedBy, revoked_at AS revokedAt, revoked_by AS revokedBy
    FROM family_link WHERE student_id IN (SELECT id FROM one) ORDER BY made_at, id`,
  familyOpenings: `${ONE} SELECT :studentId AS studentId, link_id AS linkId, label, opened_at AS openedAt
    FROM family_opening JOIN family_link ON family_link.id = link_id
    WHERE student_id IN (SELECT id FROM one) ORDER BY family_opening.id`,
  familyRequests: `${ONE} SELECT :studentId AS studentId, link_id AS linkId, kind, asked_at AS askedAt,
      settled_at AS settledAt, settled_by AS settledBy, answer
    FROM family_request WHERE student_id IN (SELECT id FROM one) ORDER BY asked_at, id`,
  told: `${ONE} SELECT :studentId AS studentId, club_group AS clubGroup, kind, text, findings, day, who,
      recorded_at AS recordedAt, voided_at AS voidedAt
    FROM told WHERE student_id IN (SELECT id FROM one) ORDER BY day, recorded_at, id`,
  waiting: `${ONE} SELECT :studentId AS studentId, fundamental_id AS fundamentalId, from_day AS fromDay,
      until_day AS untilDay, who, recorded_at AS recordedAt, voided_at AS voidedAt
    FROM waiting WHERE student_id IN (SELECT id FROM one) ORDER BY from_day, recorded_at, id`,
  fairAllocations: `${ONE} SELECT :studentId AS studentId, fair_test.fundamental_id AS fundamentalId, club_group AS clubGroup,
      coalesce(first.name, '') AS firstDrill, coalesce(second.name, '') AS secondDrill, arm, fair_value.value AS gain, fair_allocation.day, fair_allocation.who,
      fair_allocation.recorded_at AS recordedAt
    FROM fair_allocation JOIN fair_test ON fair_test.id = test_id LEFT JOIN drill AS first ON first.id = first_drill_id
      LEFT JOIN drill AS second ON second.id = second_drill_id LEFT JOIN fair_value ON allocation_id = fair_allocation.id
    WHERE student_id IN (SELECT id FROM one) ORDER BY fair_allocation.day, fair_allocation.id`,
  recordViews: `${ONE} SELECT :studentId AS studentId, who, role, what, place, viewed_at AS viewedAt
    FROM record_view WHERE student_id IN (SELECT id FROM one) ORDER BY id`,
  retentionNotices: `${ONE} SELECT :studentId AS studentId, retention_notice.kind, link_id AS linkId,
      announced_at AS announcedAt, due_day AS dueDay, held_at AS heldAt, held_by AS heldBy, why
    FROM retention_notice LEFT JOIN family_link ON family_link.id = link_id
    WHERE coalesce(retention_notice.student_id, family_link.student_id) IN (SELECT id FROM one)
    ORDER BY announced_at, retention_notice.id`,
  carriedLooks: `${ONE} SELECT :studentId AS studentId, session_id AS sessionId, fundamental_id AS fundamentalId,
      club_group AS clubGroup, said_by AS saidBy, policy_version AS policyVersion, noise_model_name AS noiseModelName, body
    FROM carried_look WHERE student_id IN (SELECT id FROM one) ORDER BY session_id, fundamental_id, club_group`,
  // Of a change that concerns two students, nothing names the other one.
  changes: `${ONE} SELECT :studentId AS studentId, iif(student_id IN (SELECT id FROM one), 'this', 'other') AS record, kind,
      who, why, changed_at AS changedAt, undone_at AS undoneAt, undone_by AS undoneBy
    FROM record_change WHERE student_id IN (SELECT id FROM one) OR other_student_id IN (SELECT id FROM one) ORDER BY id`,
};

/** What an archive tells of a student beside the record. */
export function readToldOfStudent(db: Database, { academyId, studentId }: StudentScope): ToldOfStudent {
  const rows = Object.entries(QUERIES).map(([name, sql]) => [
    name,
    db.sqlite.prepare<[{ academyId: string; studentId: string }]>(sql).all({ academyId, studentId }),
  ]);
  return Object.fromEntries(rows) as ToldOfStudent;
}
