import type { ArchivedReread, ArchivedStudent } from "@/lib/domain/archive";
import type { ArchivedSnapshot } from "@/lib/domain/archive-session";
import type { AcademyScope, PainScope, StudentScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { readArchivedAssignments, readArchivedPlans } from "./archive-plans";
import { readArchivedSessions } from "./archive-sessions";
import { readArchivedCarried } from "./carried-looks";
import { veilPain } from "./events";
import { seenBy, VISIBLE_SQL } from "./visible";

type Event = ArchivedStudent["events"][number];
type ReadBack = ArchivedStudent["readBacks"][number];

/** Why something began anew at a pause may say what hurts. */
function veilEvent(event: Event): Event {
  if (event.kind !== "injury") return event;
  return { ...veilPain(event), changes: event.changes.map((change) => ({ ...change, why: "" })) };
}

function readEvents(db: Database, studentId: string, pain: PainScope | null): Event[] {
  const changes = db.sqlite.prepare<[string], Event["changes"][number]>(
    `SELECT before, after, who, why, changed_at AS changedAt FROM rebaseline_change WHERE event_id = ? ORDER BY id`,
  );
  return db.sqlite
    .prepare<[string], Omit<Event, "changes">>(
      `SELECT id, kind, day, note, rebaselines, end_day AS endDay, place, who, recorded_at AS recordedAt,
         voided_at AS voidedAt
       FROM event WHERE student_id = ? ORDER BY day, id`,
    )
    .all(studentId)
    .map((event) => ({ ...event, changes: changes.all(event.id) }))
    .map((event) => (pain === null ? veilEvent(event) : event));
}

interface ReadItem {
  readonly reader: string | null;
  readonly reread: number | null;
}

function withReading<T extends ReadItem>({ reader, reread, ...item }: T) {
  return { ...item, reading: reader === null || reread === null ? null : { reader, reread } };
}

/** Only those that are over: what an open one has typed so far is told to nobody. */
function readReadBacks(db: Database, studentId: string): ReadBack[] {
  const items = db.sqlite.prepare<[string], Omit<ReadBack["items"][number], "reading"> & ReadItem>(
    `SELECT place, swing.session_id AS sessionId, swing.number AS swing, film_reference AS filmReference,
       read_back_item.typed, reading.reader, reading.reread
     FROM read_back_item JOIN swing ON swing.id = read_back_item.swing_id
       LEFT JOIN reading ON reading.id = read_back_item.reading_id
     WHERE read_back_id = ? ORDER BY place`,
  );
  return db.sqlite
    .prepare<[string], Omit<ReadBack, "items">>(
      `SELECT id, fundamental_id AS fundamentalId, reader, who, drawn_at AS drawnAt, finished_at AS finishedAt,
         dropped_at AS droppedAt
       FROM read_back WHERE student_id = ? AND (finished_at IS NOT NULL OR dropped_at IS NOT NULL)
       ORDER BY drawn_at, id`,
    )
    .all(studentId)
    .map((drawn) => ({ ...drawn, items: items.all(drawn.id).map(withReading) }));
}

function readPractice(db: Database, studentId: string, pain: PainScope | null): ArchivedStudent["practice"] {
  const rows = db.sqlite
    .prepare<[string], ArchivedStudent["practice"][number]>(
      `SELECT id, day, assignment_id AS assignmentId, minutes, balls, felt, source, pain, who, recorded_at AS recordedAt,
         voided_at AS voidedAt
       FROM practice WHERE student_id = ? ORDER BY day, recorded_at, id`,
    )
    .all(studentId);
  if (pain !== null) return rows;
  return rows.filter((row) => row.minutes !== null || row.balls !== null).map((row) => ({ ...row, pain: null }));
}

/**
 * Everything on file of one student in the order of an archive; what was said of the tracks is added by who judges.
 *
 * @param proof that the viewer may know what hurts; null: nothing of that goes out
 */
export function readArchivedStudent(
  db: Database,
  scope: StudentScope,
  proof: PainScope | null,
): Omit<ArchivedStudent, "snapshots"> {
  const pain = proof?.studentId === scope.studentId ? proof : null;
  const { studentId } = scope;
  const { sqlite } = db;
  const facts = sqlite
    .prepare<
      [string, string],
      Pick<
        ArchivedStudent,
        "id" | "alias" | "birthYear" | "hand" | "zone" | "clubs" | "language" | "createdAt" | "departedOn"
      >
    >(
      `SELECT id, alias, birth_year AS birthYear, hand, zone, clubs, language, created_at AS createdAt,
         departed_on AS departedOn
       FROM student WHERE id = ? AND academy_id = ?`,
    )
    .get(studentId, scope.academyId);
  if (!facts) throw new Error(`no such student: ${studentId}`);
  return {
    ...facts,
    heights: sqlite
      .prepare<[string], ArchivedStudent["heights"][number]>(
        "SELECT day, cm FROM height WHERE student_id = ? ORDER BY day",
      )
      .all(studentId),
    consents: sqlite
      .prepare<[string], ArchivedStudent["consents"][number]>(
        `SELECT id, kind, given_by AS givenBy, giver_is AS giverIs, withdrawn_by AS withdrawnBy, from_day AS fromDay, until_day AS untilDay, withdrawn_on AS withdrawnOn,
           recorded_at AS recordedAt
         FROM consent WHERE student_id = ? ORDER BY recorded_at, from_day, id`,
      )
      .all(studentId),
    sessions: readArchivedSessions(db, scope),
    events: readEvents(db, studentId, pain),
    assignments: readArchivedAssignments(db, studentId),
    practice: readPractice(db, studentId, pain),
    askings: sqlite
      .prepare<[string], ArchivedStudent["askings"][number]>(
        `SELECT fundamental_id AS fundamentalId, club_group AS clubGroup, state, day, who, plan,
           recorded_at AS recordedAt
         FROM asking WHERE student_id = ? ORDER BY id`,
      )
      .all(studentId),
    ...readArchivedPlans(db, studentId),
    readBacks: readReadBacks(db, studentId),
    carried: readArchivedCarried(db, studentId),
  };
}

/** The finished draws that hold a swing of these students, with the items of these students alone. */
export function readArchivedRereads(
  db: Database,
  scope: AcademyScope,
  students: readonly StudentScope[],
): ArchivedReread[] {
  const mine = new Set(students.map(({ studentId }) => studentId));
  const items = db.sqlite.prepare<[string], Omit<ArchivedReread["items"][number], "reading"> & ReadItem>(
    `SELECT place, reread_item.student_id AS studentId, reread_item.session_id AS sessionId, swing.number AS swing,
       reread_item.fundamental_id AS fundamentalId, film_reference AS filmReference, reading.reader, reading.reread
     FROM reread_item JOIN swing ON swing.id = reread_item.swing_id
       LEFT JOIN reading ON reading.id = reread_item.reading_id
     WHERE draw_id = ? ORDER BY place`,
  );
  return db.sqlite
    .prepare<[string], Omit<ArchivedReread, "items">>(
      `SELECT id, reader, level, same_as AS sameAs, who, day, drawn_at AS drawnAt, finished_on AS finishedOn,
         finished_at AS finishedAt
       FROM reread_draw WHERE academy_id = ? AND finished_on IS NOT NULL ORDER BY drawn_at, id`,
    )
    .all(scope.academyId)
    .map((drawn) => ({
      ...drawn,
      items: items
        .all(drawn.id)
        .filter((item) => mine.has(item.studentId))
        .map(withReading),
    }))
    .filter((drawn) => drawn.items.length > 0);
}

/** The students of an academy's archive; one who turned out to be another is in that other's record. */
export function readArchivedStudentIds(db: Database, scope: AcademyScope): string[] {
  return db.sqlite
    .prepare<[string, { seen: string | null }], string>(
      `SELECT id FROM student WHERE academy_id = ? AND merged_into IS NULL AND ${VISIBLE_SQL} ORDER BY alias, id`,
    )
    .pluck()
    .all(scope.academyId, seenBy(scope));
}

/** What is said of each track of a student on the data as they are now; whether it is listed is added by who lists. */
export function readArchivedAnalyses(
  db: Database,
  { studentId }: StudentScope,
  policyVersion: string,
): Omit<ArchivedSnapshot, "listed" | "listedLooks">[] {
  return db.sqlite
    .prepare<[string, string], Omit<ArchivedSnapshot, "listed" | "listedLooks">>(
      `SELECT fundamental_id AS fundamentalId, club_group AS clubGroup, as_of AS asOf, policy_version AS policyVersion,
         noise_model AS noiseModel, body
       FROM analysis JOIN student ON student.id = analysis.student_id AND student.revision = analysis.data_revision
       WHERE student_id = ? AND policy_version = ? ORDER BY fundamental_id, club_group`,
    )
    .all(studentId, policyVersion);
}
