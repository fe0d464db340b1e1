import type { Database } from "@/db/client";
import { insertRow, plantedIn, type TableRow, toldRows } from "../db/told-fixture";

const AT = "2031-03-01T10:00:00.000Z";
const DAY = "2031-02-01";

/** Whose rows they are, and where they lie. */
interface Place {
  readonly studentId: string;
  readonly academyId: string;
}

function last(db: Database, table: string): number {
  return db.sqlite.prepare<[], number>(`SELECT max(rowid) FROM ${table}`).pluck().get() ?? 0;
}

/** The session with all that hangs on it. */
function plantSession(db: Database, { studentId }: Place, p: (column: string) => string): number {
  const film = `film-${studentId}`;
  insertRow(db, "session", {
    ...{ id: film, student_id: studentId, day: DAY, sequence: 1, club_group: "iron", said_club_group: "iron" },
    ...{ club: p("session.club"), reader: p("session.reader"), circumstance: "unaided", aid: p("session.aid") },
    ...{ marks: p("session.marks"), note: p("session.note"), set_aside_reason: p("session.set_aside_reason") },
    ...{ created_at: AT, group_id: p("session.group_id") },
  });
  insertRow(db, "capture", {
    ...{ session_id: film, view: "face-on", placement: "same", placement_label: p("capture.placement_label") },
    ...{ squareness: "square", placed_by: p("capture.placed_by"), set_aside_reason: p("capture.set_aside_reason") },
    film_reference: p("capture.film_reference"),
  });
  insertRow(db, "stated_capture_sd", { session_id: film, fundamental_id: "hinge", sd: 1.25 });
  insertRow(db, "swing", { session_id: film, number: 1, note: p("swing.note") });
  const swing = last(db, "swing");
  insertRow(db, "reading", {
    ...{ student_id: studentId, fundamental_id: "hinge", session_id: film, swing_id: swing, reread: 0, value: 80 },
    ...{ reader: p("session.reader"), typed: p("reading.typed"), unit: "deg", sign_rule: "neutral", entered_at: AT },
  });
  insertRow(db, "correction", {
    ...{ reading_id: last(db, "reading"), kind: "change", value: 81, typed: p("correction.typed") },
    ...{ who: p("correction.who"), why: p("correction.why"), corrected_at: AT },
  });
  return swing;
}

function plantWork(db: Database, { studentId, academyId }: Place, p: (column: string) => string): void {
  const of = { student_id: studentId };
  const note = { who: p("event.who"), recorded_at: AT, voided_at: AT };
  insertRow(db, "height", { ...of, day: DAY, cm: 140.5 });
  insertRow(db, "consent", {
    ...{ id: `consent-${studentId}`, ...of, kind: "share", given_by: p("consent.given_by"), from_day: DAY },
    ...{ giver_is: "student", withdrawn_on: DAY, withdrawn_by: p("consent.withdrawn_by"), recorded_at: AT },
  });
  insertRow(db, "event", {
    ...{ id: `event-${studentId}`, ...of, kind: "injury", day: DAY, note: p("event.note"), rebaselines: "hinge" },
    ...{ end_day: DAY, place: "elbow", ...note },
  });
  insertRow(db, "rebaseline_change", {
    ...{ event_id: `event-${studentId}`, before: "", after: "hinge", changed_at: AT },
    ...{ who: p("rebaseline_change.who"), why: p("rebaseline_change.why") },
  });
  insertRow(db, "drill_assignment", {
    ...{ id: `drill-${studentId}`, ...of, drill_id: "wall", fundamental_id: "hinge", start_day: DAY, end_day: DAY },
    ...{ dose: p("drill_assignment.dose"), who: p("drill_assignment.who"), recorded_at: AT },
    end_why: p("drill_assignment.end_why"),
    stop_rule: p("drill_assignment.stop_rule"),
  });
  insertRow(db, "drill_decision", {
    ...{ assignment_id: `drill-${studentId}`, decision: "stop", why: p("drill_decision.why"), day: DAY },
    ...{ who: p("drill_decision.who"), recorded_at: AT },
  });
  insertRow(db, "priority_choice", {
    ...{ ...of, club_group: "iron", fundamental_id: "hinge", reason: p("priority_choice.reason"), day: DAY },
    ...{ who: p("priority_choice.who"), recorded_at: AT },
  });
  insertRow(db, "film_plan", {
    ...{ id: `plan-${studentId}`, ...of, club_group: "iron", made_on: DAY, due_on: DAY, body: "{}" },
    ...{ who: p("film_plan.who"), recorded_at: AT },
  });
  insertRow(db, "practice", {
    ...{ id: `practice-${studentId}`, ...of, day: DAY, assignment_id: `drill-${studentId}`, minutes: 10 },
    ...{ source: "family", pain: p("practice.pain"), who: p("practice.who"), recorded_at: AT },
  });
  insertRow(db, "asking", {
    ...{ ...of, fundamental_id: "hinge", club_group: "iron", state: "stopped", day: DAY, who: p("asking.who") },
    recorded_at: AT,
  });
  insertRow(db, "goal_band", {
    ...{ id: `band-${studentId}`, academy_id: academyId, fundamental_id: "hinge", club_group: "iron", ...of },
    ...{
      scope: "student",
      low: 70,
      high: 90,
      from_day: DAY,
      reason: p("goal_band.reason"),
      who: p("goal_band.who"),
      created_at: AT,
    },
  });
  insertRow(db, "note_coding", {
    ...{ academy_id: academyId, phrase: p("session.note"), coding: '{"kind":"none"}', who: p("note_coding.who") },
    recorded_at: AT,
  });
}

/** A row of each table that names a student, with a word of theirs in every free text; the draw is shared by all. */
export function plantStudent(db: Database, place: Place, at: number, batchId: string): ReadonlySet<string> {
  const words = new Set<string>();
  const { studentId, academyId } = place;
  const p = (column: string): string => {
    const word = plantedIn(studentId, column);
    words.add(word);
    return word;
  };
  db.sqlite
    .prepare("UPDATE student SET clubs = ?, departed_on = ? WHERE id = ?")
    .run(p("student.clubs"), DAY, studentId);
  const swing = plantSession(db, place, p);
  plantWork(db, place, p);
  const film = { session_id: `film-${studentId}`, swing_id: swing };
  insertRow(db, "read_back", {
    ...{ id: `back-${studentId}`, student_id: studentId, fundamental_id: "hinge", reader: p("read_back.reader") },
    ...{ who: p("read_back.who"), drawn_at: AT, dropped_at: AT },
  });
  insertRow(db, "read_back_item", {
    ...{
      read_back_id: `back-${studentId}`,
      place: 1,
      swing_id: swing,
      film_reference: p("read_back_item.film_reference"),
    },
    typed: p("read_back_item.typed"),
  });
  insertRow(db, "reread_item", {
    ...{ draw_id: "draw", place: at, student_id: studentId, fundamental_id: "hinge", ...film },
    film_reference: p("reread_item.film_reference"),
  });
  for (const [table, row] of toldRows(studentId, { academyId, sessionId: film.session_id, batchId })) {
    insertRow(db, table, row);
    for (const value of Object.values(row)) if (typeof value === "string" && value.startsWith("zq ")) words.add(value);
  }
  return words;
}

/** What is about a student and goes into no archive: it isn't saved, or it would be somebody else's to tell. */
export function plantKept(db: Database, { studentId, academyId }: Place): ReadonlySet<string> {
  const body = plantedIn(studentId, "draft.body");
  const outcome = plantedIn(studentId, "form_receipt.outcome");
  const rows: readonly (readonly [string, TableRow])[] = [
    [
      "draft",
      { id: `draft-${studentId}`, academy_id: academyId, kind: "x", student_id: studentId, body, updated_at: AT },
    ],
    [
      "form_receipt",
      { academy_id: academyId, key: studentId, kind: "x", outcome: JSON.stringify(outcome), saved_at: AT },
    ],
  ];
  for (const [table, row] of rows) insertRow(db, table, row);
  return new Set([body, outcome]);
}
