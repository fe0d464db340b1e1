import type { Database } from "@/db/client";
import { insertPerson } from "@/db/write/people";
import { insertSession } from "@/db/write/sessions";
import { carriedText } from "@/lib/domain/carried-look";
import { SAID } from "../lib/ingest/carried-archive";
import { NOW, openAcademy, sessionOn, studentScope } from "./academy-fixture";
import { fairRows } from "./fair-rows";

export type TableRow = Readonly<Record<string, string | number | null>>;

/** The word of a student in a column: it stands nowhere else. */
export const plantedIn = (studentId: string, column: string): string => `zq ${column} of ${studentId} qz`;

/** What has to be there before such rows: an academy, a person `robin`, a session of the student, an import. */
export interface ToldPlace {
  readonly academyId: string;
  readonly sessionId: string;
  readonly batchId: string;
}

/** One row of each table that tells of a student beside the record, with a word in every free text. */
export function toldRows(
  studentId: string,
  { academyId, sessionId, batchId }: ToldPlace,
): readonly (readonly [string, TableRow])[] {
  const p = (column: string) => plantedIn(studentId, column);
  const student = { student_id: studentId };
  return [
    [
      "charge",
      {
        ...{ id: `charge-${studentId}`, ...student, coach_id: "robin", kind: "cover", from_coach_id: "robin" },
        ...{ note: p("charge.note"), from_day: "2031-01-01", until_day: "2031-01-09", who: p("charge.who") },
        ...{ recorded_at: NOW, ended_at: NOW, ended_by: p("charge.ended_by") },
      },
    ],
    [
      "family_link",
      {
        ...{ id: `link-${studentId}`, ...student, token_hash: `hash-${studentId}`, label: p("family_link.label") },
        ...{ who: p("family_link.who"), made_at: NOW, expires_at: "2031-06-01T10:00:00.000Z", renewed_at: NOW },
        ...{ renewed_by: p("family_link.renewed_by"), revoked_at: NOW, revoked_by: p("family_link.revoked_by") },
      },
    ],
    ["family_opening", { link_id: `link-${studentId}`, opened_at: `2031-03-02T10:00:0${studentId.length}.000Z` }],
    [
      "family_request",
      {
        ...{ id: `request-${studentId}`, ...student, link_id: `link-${studentId}`, kind: "export", asked_at: NOW },
        ...{ settled_at: NOW, settled_by: p("family_request.settled_by"), answer: p("family_request.answer") },
      },
    ],
    [
      "told",
      {
        ...{ id: `told-${studentId}`, ...student, club_group: "iron", kind: "message", text: p("told.text") },
        ...{ findings: "[]", day: "2031-01-05", who: p("told.who"), recorded_at: NOW, voided_at: NOW },
      },
    ],
    ...fairRows(studentId, { academyId, who: p("fair_allocation.who"), at: NOW }),
    [
      "waiting",
      {
        ...{ id: `waiting-${studentId}`, ...student, fundamental_id: "hinge", from_day: "2031-01-05" },
        ...{ until_day: "2031-02-05", who: p("waiting.who"), recorded_at: NOW, voided_at: NOW },
      },
    ],
    [
      "record_view",
      {
        ...student,
        who: p("record_view.who"),
        role: "coach",
        what: "page",
        place: "/students/[studentId]",
        viewed_at: NOW,
      },
    ],
    [
      "retention_notice",
      {
        ...{ id: `notice-${studentId}`, academy_id: academyId, kind: "departed", ...student, link_id: null },
        ...{ announced_at: NOW, due_day: "2031-09-01", held_at: NOW, held_by: p("retention_notice.held_by") },
        why: p("retention_notice.why"),
      },
    ],
    [
      "carried_look",
      {
        ...{ session_id: sessionId, ...student, fundamental_id: "hinge", club_group: "iron", batch_id: batchId },
        ...{
          said_by: p("carried_look.said_by"),
          policy_version: "1",
          noise_model_name: "n1",
          body: carriedText({ ...SAID, date: "2031-02-01" }),
        },
      },
    ],
    [
      "record_change",
      {
        ...{ academy_id: academyId, kind: "session-facts", ...student, session_id: sessionId, before: "[]" },
        ...{ after: '{"rows":[],"mark":{"reading":0,"correction":0}}', who: p("record_change.who") },
        ...{ why: p("record_change.why"), changed_at: NOW, undone_at: NOW, undone_by: p("record_change.undone_by") },
      },
    ],
  ];
}

export function insertRow(db: Database, table: string, row: TableRow): void {
  const names = Object.keys(row);
  db.sqlite
    .prepare(`INSERT INTO ${table} (${names.join(", ")}) VALUES (${names.map((name) => `:${name}`).join(", ")})`)
    .run(row);
}

/** The academies of `openAcademy` with a coach `robin`, a session of each student named, and every row of `toldRows`. */
export async function openPlanted(students: readonly string[]): Promise<Database> {
  const db = await openAcademy();
  insertRow(db, "user", { id: "robin", name: "Robin", email: "robin@x.example", created_at: 1, updated_at: 1 });
  insertPerson(db, { userId: "robin", academyId: "a1", roles: ["coach"], assists: [], addedAt: NOW, addedBy: "Owner" });
  insertRow(db, "import_batch", {
    ...{ id: "carried", academy_id: "a1", file_name: "x.zip", content_hash: "x", form: "long", rows: 0, readings: 0 },
    ...{ answers: "{}", created_at: NOW },
  });
  for (const id of students) {
    const stamp = { now: NOW, newId: () => `film-${id}`, batchId: null };
    insertSession(db, studentScope(id), sessionOn("2031-02-01"), stamp);
    for (const [table, row] of toldRows(id, { academyId: "a1", sessionId: `film-${id}`, batchId: "carried" }))
      insertRow(db, table, row);
  }
  return db;
}
