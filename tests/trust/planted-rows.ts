import type { Database } from "@/db/client";
import { WRENS } from "./access-askers";
import { PRIVATE } from "./planted-columns";

export type Value = string | number | null;

/** The word of a column. */
export function wordOf(column: string): string {
  const at = Object.keys(PRIVATE).indexOf(column);
  if (at < 0) throw new Error(`${column} is nobody's`);
  // Of pain a place of the list is kept, and no page but the coach's has that word.
  return column === "event.place" ? "ribs" : `zq${String(at).padStart(3, "0")}qz`;
}

/** A form that Wren began. */
export const PLANTED_DRAFT = "0a0a0a0a-0a0a-4a0a-8a0a-0a0a0a0a0a0a";

const AT = "2026-09-20T08:00:00.000Z";
const DAY = "2026-09-20";
const OF = `student_id = '${WRENS}'`;

/** What is put into tables that have no row of the student, or none that may be changed. */
export function addedRows(
  db: Database,
): readonly (readonly [table: string, values: Readonly<Record<string, Value>>])[] {
  const one = (sql: string): string => db.sqlite.prepare<[], string>(sql).pluck().get() ?? "";
  const academy = one("SELECT id FROM academy");
  const session = one(`SELECT id FROM session WHERE ${OF} LIMIT 1`);
  const reading = one(`SELECT id FROM reading WHERE session_id = '${session}' AND reread = 0 LIMIT 1`);
  const student = { student_id: WRENS };
  const state = (note: string) => [{ table: "session", key: { id: session }, values: { note } }];
  const pause = { id: "planted-pause", ...student, kind: "injury", day: DAY, note: "", who: "", recorded_at: AT };
  const body = { entries: [["note", wordOf("draft.body")]], errors: {}, refusal: "", writer: "w", turn: 1 };
  return [
    ["correction", { reading_id: reading, kind: "change", value: 70, typed: "", who: "", why: "", corrected_at: AT }],
    [
      "asking",
      { ...student, fundamental_id: "hinge", club_group: "iron", state: "asked", day: DAY, who: "", recorded_at: AT },
    ],
    [
      "priority_choice",
      { ...student, club_group: "iron", fundamental_id: null, reason: "", day: DAY, who: "", recorded_at: AT },
    ],
    [
      "film_plan",
      {
        ...{ id: "planted", ...student, club_group: "iron", made_on: DAY, due_on: DAY, body: "{}", who: "" },
        recorded_at: AT,
      },
    ],
    ["waiting", { id: "planted", ...student, fundamental_id: "hinge", from_day: DAY, who: "", recorded_at: AT }],
    [
      "fair_test",
      {
        ...{ id: "planted", academy_id: academy, fundamental_id: "hinge", first_drill_id: "", second_drill_id: "" },
        ...{ least: 4, spread: 5, students: 40, looks: 2, days: 42, seed: "ab", day: DAY, who: "", recorded_at: AT },
      },
    ],
    [
      "fair_allocation",
      {
        ...{ id: "planted", test_id: "planted", ...student, club_group: "iron", coach_id: "", place: 0, arm: 1 },
        ...{ day: DAY, who: "", recorded_at: AT },
      },
    ],
    [
      "told",
      {
        ...{ id: "planted", ...student, club_group: "iron", kind: "letter", text: "", findings: "[]", day: DAY },
        ...{ who: "", recorded_at: AT },
      },
    ],
    [
      "drill_decision",
      {
        ...{ assignment_id: one(`SELECT id FROM drill_assignment WHERE ${OF} LIMIT 1`), decision: "keep", why: "" },
        ...{ day: DAY, who: "", recorded_at: AT },
      },
    ],
    ["event", { ...pause, end_day: DAY, place: wordOf("event.place") }],
    ["rebaseline_change", { event_id: "planted-pause", before: "", after: "hinge", who: "", why: "", changed_at: AT }],
    [
      "practice",
      { id: "planted", ...student, day: DAY, minutes: 5, source: "family", pain: "", who: "", recorded_at: AT },
    ],
    [
      "goal_band",
      {
        ...{
          id: "planted",
          academy_id: academy,
          fundamental_id: "hinge",
          club_group: "iron",
          scope: "student",
          ...student,
        },
        ...{ low: 60, high: 100, from_day: "2026-01-01", reason: "", created_at: "2026-01-01T08:00:00.000Z" },
      },
    ],
    [
      "record_change",
      {
        ...{ academy_id: academy, kind: "session-facts", ...student, session_id: session, who: "", why: "" },
        ...{
          before: JSON.stringify(state(wordOf("record_change.before"))),
          after: JSON.stringify({ rows: state(wordOf("record_change.after")), mark: null }),
          changed_at: AT,
        },
      },
    ],
    [
      "consent",
      {
        ...{ id: "planted", ...student, kind: "share", given_by: "", giver_is: "guardian", from_day: DAY },
        ...{ withdrawn_on: DAY, withdrawn_by: "", recorded_at: AT },
      },
    ],
    [
      "family_link",
      {
        ...{ id: "planted-link", ...student, token_hash: "planted", label: "", who: "", made_at: AT },
        ...{ expires_at: "2026-12-20T08:00:00.000Z", renewed_at: AT, renewed_by: "", revoked_at: AT, revoked_by: "" },
      },
    ],
    [
      "family_request",
      { id: "planted", ...student, kind: "export", asked_at: AT, settled_at: AT, settled_by: "", answer: "" },
    ],
    [
      "reread_item",
      {
        ...{ draw_id: one("SELECT id FROM reread_draw WHERE finished_on IS NULL LIMIT 1"), place: 999, ...student },
        ...{ session_id: session, swing_id: one(`SELECT id FROM swing WHERE session_id = '${session}' LIMIT 1`) },
        ...{ fundamental_id: "hinge", film_reference: "" },
      },
    ],
    [
      "record_view",
      {
        ...{ ...student, who: wordOf("record_view.who"), role: "coach", what: "page", viewed_at: AT },
        place: wordOf("record_view.place"),
      },
    ],
    [
      "retention_notice",
      {
        ...{
          id: "planted",
          academy_id: academy,
          kind: "departed",
          ...student,
          announced_at: AT,
          due_day: "2027-01-01",
        },
        ...{ held_at: AT, held_by: "", why: "" },
      },
    ],
    [
      "carried_look",
      {
        ...{ session_id: session, ...student, fundamental_id: "hinge", club_group: "iron", said_by: "" },
        ...{ policy_version: "p", noise_model_name: "n", body: "{}", batch_id: "imported-for-the-tests" },
      },
    ],
    ["import_source", { academy_id: academy, fingerprint: "planted", file_name: "", answers: "[]", updated_at: AT }],
    [
      "draft",
      {
        ...{ id: PLANTED_DRAFT, academy_id: academy, user_id: "wren", ...student },
        ...{ kind: `event-form ${WRENS}`, body: JSON.stringify(body), updated_at: AT },
      },
    ],
    [
      "access_token",
      { id: "planted", academy_id: academy, name: "", token_hash: "planted", who: "", user_id: "wren", created_at: AT },
    ],
    [
      "invitation",
      {
        ...{ id: "planted", academy_id: academy, kind: "join", token_hash: "planted", name: "", email: "", who: "" },
        ...{ roles: "coach", made_at: AT, expires_at: "2036-12-20T08:00:00.000Z" },
      },
    ],
    [
      "erasure",
      { id: "planted", academy_id: academy, erased_at: AT, who: "", reason: "asked", sessions: 1, readings: 2 },
    ],
    [
      "form_receipt",
      {
        academy_id: academy,
        key: "planted",
        kind: "event-form",
        outcome: JSON.stringify({ planted: wordOf("form_receipt.outcome") }),
        saved_at: AT,
      },
    ],
    ["two_factor", { id: "planted", secret: "", backup_codes: "", user_id: "gull" }],
    ["verification", { id: "planted", identifier: "", value: "", expires_at: 1, created_at: 1, updated_at: 1 }],
    ["sign_in_try", { key: wordOf("sign_in_try.key"), wrong: 1, first_at: 1, last_at: 1, wait_until: 1 }],
  ];
}
