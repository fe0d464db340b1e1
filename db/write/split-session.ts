import type { ClubGroup } from "@/lib/domain/club-group";
import type { ColumnValue, RowState } from "@/lib/domain/record-change";
import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { isBeingRead } from "../read/being-read";
import { freeSequence, movedReadings, movedRereads, turnedSightings } from "./moved-rows";
import { type ChangeNote, writeRecordChange } from "./record-changes";

/** Which swings become a session of their own, and what is known of that one. */
export interface SplitWish {
  readonly sessionId: string;
  /** By number; they keep their numbers. */
  readonly swings: readonly number[];
  readonly newId: string;
  readonly day: string;
  readonly clubGroup: ClubGroup;
  readonly club: string | null;
  readonly turned: readonly string[];
}

/** `no-swings`: none of them is there; `all-swings`: nothing would stay, so the session is to be moved instead. */
export type SessionSplit =
  | { readonly kind: "split"; readonly changeId: number; readonly sessionId: string }
  | { readonly kind: "unknown-session" | "no-swings" | "all-swings" | "being-read" };

type Row = Record<string, ColumnValue>;

/** The new session with a copy of the old one's films, before any swing is in it. */
function newSession(db: Database, old: Row, wish: SplitWish, to: StudentScope, now: string): RowState[] {
  const { id: _id, ...facts } = old;
  const { newId, sessionId, day, clubGroup, club } = wish;
  const place = { studentId: to.studentId, clubGroup, day, sessionId: newId };
  const said = { day, club, said_club_group: clubGroup, club_group: clubGroup, created_at: now };
  const counts = { solid: null, balls: null, batch_id: null, group_id: null };
  const sequence = freeSequence(db, place, 1);
  const copies = (table: string, key: string): RowState[] =>
    db.sqlite
      .prepare<[string], Row>(`SELECT * FROM ${table} WHERE session_id = ? ORDER BY ${key}`)
      .all(sessionId)
      .map(({ session_id: _session, [key]: name, ...values }) => ({
        table,
        key: { session_id: newId, [key]: String(name) },
        values: { ...values, batch_id: null },
      }));
  return [
    {
      table: "session",
      key: { id: newId },
      values: { ...facts, ...said, ...counts, student_id: to.studentId, sequence },
    },
    ...copies("capture", "view"),
    ...copies("stated_capture_sd", "fundamental_id"),
  ];
}

/** Makes a session of its own of some swings of another, of the same student or another one, and keeps how it was. */
export function splitSession(
  db: Database,
  { from, to }: { readonly from: StudentScope; readonly to: StudentScope },
  wish: SplitWish,
  note: ChangeNote,
): SessionSplit {
  return inTransaction(db, () => {
    const { sessionId, newId } = wish;
    const old = db.sqlite
      .prepare<[string, string], Row>("SELECT * FROM session WHERE id = ? AND student_id = ?")
      .get(sessionId, from.studentId);
    if (!old) return { kind: "unknown-session" };
    const swings = db.sqlite
      .prepare<[string], { id: number; number: number }>(
        "SELECT id, number FROM swing WHERE session_id = ? ORDER BY id",
      )
      .all(sessionId);
    const going = swings.filter((swing) => wish.swings.includes(swing.number));
    if (going.length === 0) return { kind: "no-swings" };
    if (going.length === swings.length) return { kind: "all-swings" };
    if (isBeingRead(db, [sessionId])) return { kind: "being-read" };
    const choice = { sessionId, swings: going.map((swing) => swing.number) };
    const columns = { session_id: newId, student_id: to.studentId };
    const made = newSession(db, old, wish, to, note.now);
    const turned = wish.turned.length > 0 ? turnedSightings(db, sessionId) : [];
    const sight = (state: RowState): Row =>
      turned.find(({ key }) => state.table === "capture" && key.view === state.key.view)?.values ?? {};
    const after: RowState[] = [
      ...made.map((state) => ({ ...state, values: { ...state.values, ...sight(state) } })),
      ...going.map(({ id }) => ({ table: "swing", key: { id }, values: { session_id: newId } })),
      ...movedReadings(db, choice, wish, columns),
      ...movedRereads(db, choice, columns),
    ];
    const other = to.studentId === from.studentId ? null : to.studentId;
    const change = {
      kind: "split-session",
      studentId: from.studentId,
      otherStudentId: other,
      sessionId,
      after,
    } as const;
    return { kind: "split", changeId: writeRecordChange(db, from, change, note), sessionId: newId };
  });
}
