import type { Naming } from "@/lib/domain/named-in";
import type { Database } from "../client";
import type { ErasedGroup } from "./erased-group";

const MINE = "student_id IN (SELECT value FROM json_each(:ids))";
const OF_SESSION = `session_id IN (SELECT id FROM session WHERE ${MINE})`;
const OF_SWING = `swing_id IN (SELECT swing.id FROM swing WHERE ${OF_SESSION})`;
const OF_LINK = `link_id IN (SELECT id FROM family_link WHERE ${MINE})`;

/**
 * Tables of which a student's rows go whole, and which rows these are, in the order in which they can go. A table that
 * holds a student's data and isn't here, nor in `SCRUBBED`, fails a test.
 */
export const ROWS_OF_STUDENT = {
  carried_look: `${MINE} OR ${OF_SESSION}`,
  look_noise: `${MINE} OR ${OF_SESSION}`,
  analysis: MINE,
  reread_item: `${MINE} OR ${OF_SESSION} OR ${OF_SWING}`,
  read_back_item: `read_back_id IN (SELECT id FROM read_back WHERE ${MINE}) OR ${OF_SWING}`,
  read_back: MINE,
  correction: `reading_id IN (SELECT id FROM reading WHERE ${MINE} OR ${OF_SESSION})`,
  reading: `${MINE} OR ${OF_SESSION}`,
  stated_capture_sd: OF_SESSION,
  capture: OF_SESSION,
  swing: OF_SESSION,
  rebaseline_change: `event_id IN (SELECT id FROM event WHERE ${MINE})`,
  practice: MINE,
  event: MINE,
  drill_decision: `assignment_id IN (SELECT id FROM drill_assignment WHERE ${MINE})`,
  drill_assignment: MINE,
  priority_choice: MINE,
  film_plan: MINE,
  told: MINE,
  waiting: MINE,
  fair_value: `allocation_id IN (SELECT id FROM fair_allocation WHERE ${MINE})`,
  fair_allocation: MINE,
  asking: MINE,
  goal_band: MINE,
  height: MINE,
  consent: MINE,
  charge: MINE,
  family_opening: OF_LINK,
  family_request: `${MINE} OR ${OF_LINK}`,
  retention_notice: `${MINE} OR ${OF_LINK}`,
  family_link: MINE,
  record_view: MINE,
  record_change: `${MINE} OR other_student_id IN (SELECT value FROM json_each(:ids)) OR ${OF_SESSION}`,
  draft: MINE,
  session: MINE,
  student: "id IN (SELECT value FROM json_each(:ids))",
} as const;

export type StudentTable = keyof typeof ROWS_OF_STUDENT;

/** Tables whose rows are others' or the academy's, with the columns that may name a student: what names them is taken out. */
export const SCRUBBED = {
  form_receipt: ["kind", "outcome"],
  note_coding: ["phrase", "coding"],
  roster_list: ["body"],
  seen: ["body"],
  preference: ["value"],
  import_batch: ["file_name", "content_hash", "answers"],
  import_source: ["file_name", "answers"],
  record_change: ["before", "after"],
  draft: ["id", "kind", "body"],
  reread_draw: ["id"],
} as const;

/** Rows that go, by table. */
export type StudentRowCounts = Readonly<Record<StudentTable, number>>;

/** How many rows are a student's, by table. */
export function readStudentRowCounts(db: Database, { studentIds }: ErasedGroup): StudentRowCounts {
  const ids = JSON.stringify(studentIds);
  const counts = Object.entries(ROWS_OF_STUDENT).map(([table, mine]) => [
    table,
    db.sqlite.prepare<[{ ids: string }], number>(`SELECT count(*) FROM ${table} WHERE ${mine}`).pluck().get({ ids }),
  ]);
  return Object.fromEntries(counts);
}

const NAMED = [
  ...["session", "event", "drill_assignment", "practice", "read_back", "consent", "charge", "goal_band"],
  ...(["film_plan", "told", "waiting", "fair_allocation"] as const),
  ...["family_link", "family_request", "retention_notice"],
] as const;

/** By what a student could be found in texts: every id of theirs and of what is theirs, and every alias. */
export function readNaming(db: Database, { studentIds, aliases }: ErasedGroup): Naming {
  const ids = JSON.stringify(studentIds);
  const query = NAMED.map((table) => `SELECT id FROM ${table} WHERE ${MINE}`).join(" UNION ALL ");
  const found = db.sqlite.prepare<[{ ids: string }], string>(query).pluck().all({ ids });
  return { ids: new Set([...studentIds, ...found]), aliases };
}

/** Imports from which anything of a student came. */
export function readBatchesOf(db: Database, { studentIds }: ErasedGroup): string[] {
  const ids = JSON.stringify(studentIds);
  const parts = [
    ...["session", "reading", "practice", "event", "drill_assignment", "consent", "carried_look"].map((table) => [
      table,
      MINE,
    ]),
    ...["capture", "stated_capture_sd", "swing"].map((table) => [table, OF_SESSION]),
    ["student", ROWS_OF_STUDENT.student],
  ];
  const query = parts.map(([table, mine]) => `SELECT batch_id FROM ${table} WHERE (${mine})`).join(" UNION ");
  return db.sqlite
    .prepare<[{ ids: string }], string | null>(query)
    .pluck()
    .all({ ids })
    .flatMap((id) => id ?? []);
}
