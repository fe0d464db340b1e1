import type { ColumnValue, RowState } from "@/lib/domain/record-change";
import type { Database } from "../client";

/** Tables and columns that a change of the record may touch. Names come from here alone, never from what is kept. */
const PATCHED: Readonly<Record<string, readonly string[]>> = {
  student: ["id", "merged_into"],
  session: [
    ...[
      "id",
      "student_id",
      "day",
      "sequence",
      "club_group",
      "said_club_group",
      "club",
      "reader",
      "circumstance",
      "aid",
    ],
    ...["stance_width_cm", "days_since_practice", "marks", "note", "solid", "balls", "set_aside_reason", "batch_id"],
    ...["created_at", "group_id"],
  ],
  capture: [
    ...["session_id", "view", "placement", "placement_label", "squareness", "off_by", "pointing_stick_lean"],
    ...["across_stick_slope", "plumb_lean", "lens_height_cm", "hands_height_cm", "distance_cm", "beside_hands_cm"],
    ...["frames_per_second", "shutter_per_second", "placed_by", "set_aside_reason", "film_reference", "batch_id"],
  ],
  stated_capture_sd: ["session_id", "fundamental_id", "sd", "batch_id"],
  swing: ["id", "session_id"],
  reading: ["id", "session_id", "student_id", "value", "reader"],
  correction: ["id", "value"],
  look_noise: ["session_id", "fundamental_id", "club_group", "student_id"],
  carried_look: ["session_id", "fundamental_id", "club_group", "student_id"],
  height: ["student_id", "day", "cm"],
  consent: ["id", "student_id"],
  event: ["id", "student_id"],
  drill_assignment: ["id", "student_id"],
  practice: ["id", "student_id"],
  goal_band: ["id", "student_id"],
  asking: ["id", "student_id"],
  priority_choice: ["id", "student_id"],
  film_plan: ["id", "student_id"],
  told: ["id", "student_id"],
  waiting: ["id", "student_id"],
  fair_allocation: ["id", "student_id"],
  read_back: ["id", "student_id"],
  charge: ["id", "student_id"],
  family_link: ["id", "student_id"],
  family_request: ["id", "student_id"],
  reread_item: ["draw_id", "place", "student_id", "session_id"],
};

function requireColumns({ table, key, values }: RowState): void {
  const known = PATCHED[table];
  const named = [...Object.keys(key), ...Object.keys(values ?? {})];
  if (!known || named.length === 0 || named.some((name) => !known.includes(name)))
    throw new RangeError(`no column that a change may touch: ${table} ${named.join(", ")}`);
}

const matches = (names: readonly string[]): string => names.map((name) => `${name} = :${name}`).join(" AND ");

/** How a row is now, in the columns that a state sets; in all of them where the state has no row. */
export function readRowState(db: Database, state: RowState): RowState {
  requireColumns(state);
  const { table, key, values } = state;
  const columns = values === null ? (PATCHED[table] ?? []) : Object.keys(values);
  const found = db.sqlite
    .prepare<[Record<string, ColumnValue>], Record<string, ColumnValue>>(
      `SELECT ${columns.join(", ")} FROM ${table} WHERE ${matches(Object.keys(key))}`,
    )
    .get({ ...key });
  return { table, key, values: found ?? null };
}

/** Puts rows into the states given, in their order: changed, made, or removed. To be called inside a transaction. */
export function writeRowStates(db: Database, states: readonly RowState[]): void {
  for (const state of states) {
    requireColumns(state);
    const { table, key, values } = state;
    const where = matches(Object.keys(key));
    if (values === null) {
      db.sqlite.prepare(`DELETE FROM ${table} WHERE ${where}`).run({ ...key });
      continue;
    }
    const sets = Object.keys(values).map((name) => `${name} = :${name}`);
    const all = { ...values, ...key };
    if (db.sqlite.prepare(`UPDATE ${table} SET ${sets.join(", ")} WHERE ${where}`).run(all).changes > 0) continue;
    const names = Object.keys(all);
    db.sqlite
      .prepare(`INSERT INTO ${table} (${names.join(", ")}) VALUES (${names.map((name) => `:${name}`).join(", ")})`)
      .run(all);
  }
}
