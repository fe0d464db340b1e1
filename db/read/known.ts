import { type ClubGrouping, groupNow } from "@/lib/domain/club-grouping";
import type { ColumnValue } from "@/lib/domain/record-change";
import { rowName } from "@/lib/domain/record-change";
import { type RowsByName, revertChanges } from "@/lib/domain/revert-changes";
import type { StudentScope } from "@/lib/domain/scope";
import type { Reading, Session } from "@/lib/domain/session";
import type { StudentEvent } from "@/lib/domain/student";
import type { Database } from "../client";
import { splitWords } from "../joined-words";
import { readClubGrouping } from "./club-groups";
import { capturesKnown, eventsKnown, sessionOf } from "./known-rows";
import type { LookNoise } from "./looks";
import { readAcademyChanges } from "./record-changes";
import type { FiledCapture, StatedCaptureSd } from "./sessions";

/** What was on file of one student at an instant, in the forms and orders of the reads of what is on file now. */
export interface KnownThen {
  readonly sessions: readonly Session[];
  readonly captures: readonly FiledCapture[];
  readonly statedCaptureSds: readonly StatedCaptureSd[];
  readonly readings: readonly Reading[];
  readonly events: readonly StudentEvent[];
  readonly lookNoise: readonly LookNoise[];
}

type Row = Record<string, ColumnValue>;

/** Tables whose rows a change may have taken elsewhere, with their keys. */
const TAKEN: readonly { readonly table: string; readonly key: readonly string[]; readonly sql: string }[] = [
  { table: "session", key: ["id"], sql: "SELECT * FROM session WHERE student_id = ?" },
  {
    table: "capture",
    key: ["session_id", "view"],
    sql: "SELECT capture.* FROM capture JOIN session ON session.id = session_id WHERE student_id = ?",
  },
  {
    table: "stated_capture_sd",
    key: ["session_id", "fundamental_id"],
    sql: "SELECT sd.* FROM stated_capture_sd AS sd JOIN session ON session.id = session_id WHERE student_id = ?",
  },
  {
    table: "swing",
    key: ["id"],
    sql: "SELECT swing.* FROM swing JOIN session ON session.id = session_id WHERE student_id = ?",
  },
  { table: "reading", key: ["id"], sql: "SELECT * FROM reading WHERE student_id = ? AND reread = 0" },
  {
    table: "correction",
    key: ["id"],
    sql: "SELECT correction.* FROM correction JOIN reading ON reading.id = reading_id WHERE student_id = ? AND reread = 0",
  },
  { table: "event", key: ["id"], sql: "SELECT * FROM event WHERE student_id = ?" },
  {
    table: "look_noise",
    key: ["session_id", "fundamental_id", "club_group"],
    sql: "SELECT * FROM look_noise WHERE student_id = ?",
  },
];

/** Students between whom rows went to and fro, this one among them. */
function connected(studentId: string, changes: readonly { studentId: string; otherStudentId: string | null }[]) {
  const found = new Set([studentId]);
  for (let before = 0; before < found.size; ) {
    before = found.size;
    for (const { studentId: from, otherStudentId: to } of changes)
      if (to !== null && (found.has(from) || found.has(to))) found.add(from).add(to);
  }
  return [...found];
}

function loadRows(db: Database, students: readonly string[]): RowsByName {
  const rows: RowsByName = new Map();
  for (const { table, key, sql } of TAKEN) {
    const statement = db.sqlite.prepare<[string], Row>(sql);
    for (const student of students)
      for (const row of statement.all(student)) {
        const named = Object.fromEntries(key.map((name) => [name, row[name] as string | number]));
        rows.set(rowName({ table, key: named }), row);
      }
  }
  return rows;
}

function tableOf(rows: RowsByName, table: string): Row[] {
  return [...rows].flatMap(([name, row]) => (name.startsWith(`${table} `) ? [row] : []));
}

/** Sessions known then with the group that they lie in by today's groups, in the order of a season. */
function sessionsKnown(rows: RowsByName, scope: StudentScope, grouping: ClubGrouping, knownAt: string): Row[] {
  return tableOf(rows, "session")
    .filter((row) => row.student_id === scope.studentId && String(row.created_at) <= knownAt)
    .map((row): Row => {
      const said = String(row.said_club_group) as Parameters<typeof groupNow>[1];
      return { ...row, club_group: groupNow(grouping, said, row.club as string | null) };
    })
    .sort(
      (a, b) =>
        compare(a.day, b.day) ||
        Number(a.sequence) - Number(b.sequence) ||
        compare(a.said_club_group, b.said_club_group),
    );
}

const compare = (a: ColumnValue | undefined, b: ColumnValue | undefined): number =>
  String(a) < String(b) ? -1 : String(a) > String(b) ? 1 : 0;

function readingsKnown(rows: RowsByName, sessions: readonly Row[], knownAt: string): Reading[] {
  const place = new Map(sessions.map((row, at) => [String(row.id), { at, reader: row.reader }]));
  const numbers = new Map(tableOf(rows, "swing").map((row) => [row.id, Number(row.number)]));
  const latest = new Map<ColumnValue, Row>();
  for (const row of tableOf(rows, "correction")) {
    const known = latest.get(row.reading_id as ColumnValue);
    if (String(row.corrected_at) <= knownAt && (!known || Number(known.id) < Number(row.id)))
      latest.set(row.reading_id as ColumnValue, row);
  }
  return tableOf(rows, "reading")
    .flatMap((row): Reading[] => {
      const session = place.get(String(row.session_id));
      const swing = numbers.get(row.swing_id as ColumnValue);
      const mend = latest.get(row.id as ColumnValue);
      if (!session || swing === undefined || session.reader !== row.reader || String(row.entered_at) > knownAt)
        return [];
      if (mend?.kind === "void") return [];
      const { value, typed } = mend ?? row;
      return [
        {
          sessionId: String(row.session_id),
          swing,
          fundamentalId: String(row.fundamental_id) as Reading["fundamentalId"],
          value: value as number | null,
          typed: String(typed),
          signRule: row.sign_rule as Reading["signRule"],
        },
      ];
    })
    .sort(
      (a, b) =>
        (place.get(a.sessionId)?.at ?? 0) - (place.get(b.sessionId)?.at ?? 0) ||
        a.swing - b.swing ||
        compare(a.fundamentalId, b.fundamentalId),
    );
}

/**
 * What was known of one student at an instant: rows entered later are left out, corrections made later too, and changes of
 * the record made or undone later are taken back in memory. Nothing is written.
 *
 * Sessions lie in the club groups of today. A camera record counts as known with its session, or with the import that
 * brought it. What an import brought that was taken back since isn't on file any more.
 *
 * @param knownAt ISO instant, the last one that is known
 */
export function readKnownThen(db: Database, scope: StudentScope, knownAt: string): KnownThen {
  const all = readAcademyChanges(db, scope);
  const later = all.filter((change) => change.changedAt > knownAt || (change.undoneAt ?? "") > knownAt);
  const rows = loadRows(db, connected(scope.studentId, later));
  revertChanges(rows, later, knownAt);
  const sessions = sessionsKnown(rows, scope, readClubGrouping(db, scope), knownAt);
  const order = new Map(sessions.map((row, at) => [String(row.id), at]));
  const films = tableOf(rows, "capture").filter((row) => order.has(String(row.session_id)));
  const stated = tableOf(rows, "stated_capture_sd").filter((row) => order.has(String(row.session_id)));
  const known = capturesKnown(db, { films, stated }, order, knownAt);
  return {
    sessions: sessions.map((row) => ({ ...sessionOf(row), marks: splitWords(String(row.marks ?? "")) })),
    ...known,
    readings: readingsKnown(rows, sessions, knownAt),
    events: eventsKnown(
      db,
      tableOf(rows, "event").filter((row) => row.student_id === scope.studentId),
      knownAt,
    ),
    lookNoise: tableOf(rows, "look_noise")
      .filter((row) => order.has(String(row.session_id)))
      .map((row) => ({
        sessionId: String(row.session_id),
        fundamentalId: String(row.fundamental_id),
        clubGroup: String(row.club_group),
        noiseModelName: String(row.noise_model_name),
      })),
  };
}
