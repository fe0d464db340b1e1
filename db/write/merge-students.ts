import type { RowState } from "@/lib/domain/record-change";
import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { isBeingRead } from "../read/being-read";
import { freeSequence, movedSession } from "./moved-rows";
import { type ChangeNote, writeRecordChange } from "./record-changes";

export type StudentMerge =
  | { readonly kind: "merged"; readonly changeId: number; readonly sessions: number }
  | { readonly kind: "same-student" | "merged-before" | "being-read" | "draft-open" };

/**
 * Tables whose rows name a student beside their own key. Whoever had the one in charge has the other in charge now, and the
 * family's links show the whole record: it is one and the same person's. What stays: who looked is never changed, and what was
 * announced to be erased of a record that is no more must not befall the other; both are read through `merged_into`.
 */
const OWNED = [
  ...(["consent", "event", "drill_assignment", "practice", "goal_band", "asking", "read_back"] as const),
  ...(["priority_choice", "film_plan", "told", "waiting", "fair_allocation"] as const),
  ...(["charge", "family_link", "family_request"] as const),
];

/** Sessions go one after the other, so that two that would take one place don't. */
function sessionStates(db: Database, from: StudentScope, to: StudentScope, turned: readonly string[]): RowState[] {
  const places = db.sqlite
    .prepare<[string], { id: string; day: string; said: string }>(
      "SELECT id, day, said_club_group AS said FROM session WHERE student_id = ? ORDER BY day, sequence, id",
    )
    .all(from.studentId);
  const given = new Map<string, Set<number>>();
  return places.flatMap(({ id, day, said }) => {
    const states = movedSession(db, id, { studentId: to.studentId, turned });
    const name = `${said} ${day}`;
    const mine = given.get(name) ?? new Set<number>();
    given.set(name, mine);
    return states.map((state) => {
      if (state.table !== "session" || state.values === null) return state;
      let sequence = Number(state.values.sequence);
      while (
        mine.has(sequence) ||
        freeSequence(db, { studentId: to.studentId, clubGroup: said, day, sessionId: id }, sequence) !== sequence
      )
        sequence += 1;
      mine.add(sequence);
      return { ...state, values: { ...state.values, sequence } };
    });
  });
}

/** Heights of days on which the other has one stay where they are. */
function heightStates(db: Database, from: StudentScope, to: StudentScope): RowState[] {
  return db.sqlite
    .prepare<[string, string], { day: string; cm: number }>(
      `SELECT day, cm FROM height WHERE student_id = ? AND day NOT IN (SELECT day FROM height WHERE student_id = ?)
       ORDER BY day`,
    )
    .all(from.studentId, to.studentId)
    .flatMap(({ day, cm }) => [
      { table: "height", key: { student_id: from.studentId, day }, values: null },
      { table: "height", key: { student_id: to.studentId, day }, values: { cm } },
    ]);
}

// A form about a session or an event of the student goes with it; the form of this very merge is in nobody's way.
const OPEN_DRAFT = `SELECT 1 FROM draft
  WHERE student_id = ? AND kind LIKE '% ' || student_id AND kind NOT LIKE 'dropped %' AND kind NOT LIKE 'merge-form %'`;

/**
 * One student turns out to be another: everything on file of the one goes to the other, who keeps the alias, hand and
 * birth year. The one is listed nowhere any more.
 */
export function mergeStudents(
  db: Database,
  { from, to }: { readonly from: StudentScope; readonly to: StudentScope },
  turned: readonly string[],
  note: ChangeNote,
): StudentMerge {
  return inTransaction(db, () => {
    if (from.studentId === to.studentId) return { kind: "same-student" };
    const gone = db.sqlite
      .prepare("SELECT 1 FROM student WHERE id IN (?, ?) AND merged_into IS NOT NULL")
      .get(from.studentId, to.studentId);
    if (gone) return { kind: "merged-before" };
    const sessions = sessionStates(db, from, to, turned);
    const ids = sessions.flatMap(({ table, key }) => (table === "session" ? [String(key.id)] : []));
    if (isBeingRead(db, ids)) return { kind: "being-read" };
    if (db.sqlite.prepare(OPEN_DRAFT).get(from.studentId)) return { kind: "draft-open" };
    const owned = OWNED.flatMap((table) =>
      db.sqlite
        .prepare<[string], { id: string | number }>(`SELECT id FROM ${table} WHERE student_id = ? ORDER BY id`)
        .all(from.studentId)
        .map((key): RowState => ({ table, key: { ...key }, values: { student_id: to.studentId } })),
    );
    const merged = { table: "student", key: { id: from.studentId }, values: { merged_into: to.studentId } };
    const change = {
      kind: "merge-students",
      studentId: from.studentId,
      otherStudentId: to.studentId,
      sessionId: null,
      after: [...sessions, ...owned, ...heightStates(db, from, to), merged],
    } as const;
    return { kind: "merged", changeId: writeRecordChange(db, from, change, note), sessions: ids.length };
  });
}
