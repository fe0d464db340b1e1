import { groupNow } from "@/lib/domain/club-grouping";
import type { ChangeKind, RecordChange, RecordMark, RowState } from "@/lib/domain/record-change";
import { rowName } from "@/lib/domain/record-change";
import type { StudentScope } from "@/lib/domain/scope";
import { type Database, inTransaction } from "../client";
import { isBeingRead } from "../read/being-read";
import { type AcademyKey, readClubGrouping } from "../read/club-groups";
import { readAcademyChanges, readRecordChanges } from "../read/record-changes";
import { readRowState, writeRowStates } from "./row-states";

/** Who changes the record, why, and when. */
export interface ChangeNote {
  readonly who: string;
  readonly why: string;
  readonly now: string;
}

/** A change that is ready: rows with the columns that it sets. */
export interface NewChange {
  readonly kind: ChangeKind;
  readonly studentId: string;
  readonly otherStudentId: string | null;
  readonly sessionId: string | null;
  readonly after: readonly RowState[];
}

/** Why a change can't be undone: it was, or something rests on it. */
export type UndoOutcome =
  | { readonly kind: "undone"; readonly studentIds: readonly string[] }
  | { readonly kind: "not-there" | "undone-before" }
  | { readonly kind: "built-on"; readonly by: "change" | "values" | "rereads" | "happened" | "place" };

function grow(db: Database, scope: AcademyKey, studentIds: Iterable<string | null>): void {
  const bump = db.sqlite.prepare("UPDATE student SET revision = revision + 1 WHERE id = ? AND academy_id = ?");
  for (const id of new Set(studentIds))
    if (id !== null && bump.run(id, scope.academyId).changes !== 1) throw new Error(`no such student: ${id}`);
}

/** The group in force of each session that was touched follows from what is said of it now. */
function placeInGroups(db: Database, scope: AcademyKey, states: readonly RowState[]): void {
  const grouping = readClubGrouping(db, scope);
  const said = db.sqlite.prepare<[string], { said: string; club: string | null }>(
    "SELECT said_club_group AS said, club FROM session WHERE id = ?",
  );
  const put = db.sqlite.prepare("UPDATE session SET club_group = ? WHERE id = ?");
  for (const { table, key } of states) {
    if (table !== "session") continue;
    const row = said.get(String(key.id));
    if (row) put.run(groupNow(grouping, row.said as Parameters<typeof groupNow>[1], row.club), key.id);
  }
}

function markNow(db: Database): RecordMark {
  const last = (table: "reading" | "correction"): number =>
    db.sqlite.prepare<[], number>(`SELECT coalesce(max(id), 0) FROM ${table}`).pluck().get() ?? 0;
  return { reading: last("reading"), correction: last("correction") };
}

/**
 * Makes a change and keeps how it was. To be called inside a transaction, by what has seen that the rows are the
 * scope's own.
 *
 * @returns number of the change
 */
export function writeRecordChange(db: Database, scope: AcademyKey, change: NewChange, note: ChangeNote): number {
  const before = change.after.map((state) => readRowState(db, state));
  const mark = markNow(db);
  writeRowStates(db, change.after);
  placeInGroups(db, scope, change.after);
  grow(db, scope, [change.studentId, change.otherStudentId]);
  const { lastInsertRowid } = db.sqlite
    .prepare(
      `INSERT INTO record_change (academy_id, kind, student_id, other_student_id, session_id, before, after, who, why,
         changed_at)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    )
    .run(
      scope.academyId,
      change.kind,
      change.studentId,
      change.otherStudentId,
      change.sessionId,
      JSON.stringify(before),
      JSON.stringify({ rows: change.after, mark }),
      note.who,
      note.why,
      note.now,
    );
  return Number(lastInsertRowid);
}

/** Names of the rows that a change touches, and of the sessions that they lie or lay in. */
function touchedNames({ before, after, sessionId }: RecordChange): ReadonlySet<string> {
  const sessions = [...before, ...after].flatMap(({ key, values }) => [key.session_id, values?.session_id]);
  return new Set([
    ...after.map(rowName),
    ...[...sessions, sessionId].flatMap((id) =>
      typeof id === "string" ? [rowName({ table: "session", key: { id } })] : [],
    ),
  ]);
}

/** What rests on a change, so that it can't be undone any more; null: nothing. */
function builtOn(
  db: Database,
  change: RecordChange,
  all: readonly RecordChange[],
): Extract<UndoOutcome, { kind: "built-on" }>["by"] | null {
  const names = touchedNames(change);
  const later = all.filter((each) => each.id > change.id && each.undoneAt === null);
  if (later.some((each) => [...touchedNames(each)].some((name) => names.has(name)))) return "change";
  if (change.kind === "session-facts") return builtOnReader(db, change);
  const sessions = JSON.stringify(change.after.flatMap(({ table, key }) => (table === "session" ? [key.id] : [])));
  const one = (sql: string, args: Record<string, unknown>): boolean =>
    db.sqlite.prepare<[Record<string, unknown>], 1>(sql).get(args) !== undefined;
  const touched =
    change.kind === "merge-students"
      ? "student_id = :student"
      : "session_id IN (SELECT value FROM json_each(:sessions))";
  const args = { sessions, student: change.otherStudentId, mark: change.mark.reading };
  if (one(`SELECT 1 FROM reading WHERE id > :mark AND ${touched}`, args)) return "values";
  const mended = `SELECT 1 FROM correction JOIN reading ON reading.id = correction.reading_id
    WHERE correction.id > :mark AND ${touched}`;
  if (one(mended, { ...args, mark: change.mark.correction })) return "values";
  if (isReadAgain(db, change, sessions) || isBeingRead(db, JSON.parse(sessions) as string[])) return "rereads";
  return change.kind === "merge-students" && hasHappened(db, change) ? "happened" : null;
}

/** What rests on the reader that a change of facts named: readings that were added as that reader's since. */
function builtOnReader(db: Database, change: RecordChange): "values" | "rereads" | null {
  const named = change.after.find(({ table, values }) => table === "session" && values?.reader !== undefined);
  if (named === undefined) return null;
  const added = db.sqlite
    .prepare("SELECT 1 FROM reading WHERE id > ? AND session_id = ? AND reader = ? AND reread = 0")
    .get(change.mark.reading, named.key.id, named.values?.reader);
  if (added !== undefined) return "values";
  return isBeingRead(db, [String(named.key.id)]) ? "rereads" : null;
}

/** Whether a session that it touches was drawn to be read again since. */
function isReadAgain(db: Database, change: RecordChange, sessions: string): boolean {
  const known = new Set(change.after.map(rowName));
  const drawn = db.sqlite
    .prepare<[string], { draw_id: string; place: number }>(
      "SELECT draw_id, place FROM reread_item WHERE session_id IN (SELECT value FROM json_each(?))",
    )
    .all(sessions);
  return drawn.some((key) => !known.has(rowName({ table: "reread_item", key: { ...key } })));
}

/**
 * What else may have been recorded of a student since, who then was two: nobody can say of which. A link that was ended by hand
 * and a request that was settled are nobody's business any more, nor is practice that was taken back. That something hurt is,
 * also when it is over.
 */
const HAPPENED = [
  ...[
    "event",
    "drill_assignment",
    "consent",
    "asking",
    "charge",
    "priority_choice",
    "film_plan",
    "told",
    "waiting",
    "fair_allocation",
  ].map((table) => `${table} WHERE recorded_at`),
  "practice WHERE (voided_at IS NULL OR pain IS NOT NULL) AND recorded_at",
  "family_link WHERE revoked_at IS NULL AND made_at",
  "family_request WHERE settled_at IS NULL AND asked_at",
];

/** Whether something else was recorded of the student into whom another was merged, since. */
function hasHappened(db: Database, { otherStudentId, changedAt }: RecordChange): boolean {
  return HAPPENED.some((since) =>
    db.sqlite.prepare(`SELECT 1 FROM ${since} > ? AND student_id = ?`).get(changedAt, otherStudentId),
  );
}

/** Whether a row may be gone since, and nothing is the worse for it: a link that has ended goes by the clock. */
function mayBeGone({ table }: RowState): boolean {
  return table === "family_link" || table === "family_request";
}

/** How it was before the change, without what has gone by the clock since: that is not made anew. */
function statesBack(db: Database, { before }: RecordChange): RowState[] {
  return before.filter((state) => !mayBeGone(state) || readRowState(db, state).values !== null).reverse();
}

/** Whether the rows are as the change left them; the group in force follows from others and is passed over. */
function isAsLeft(db: Database, change: RecordChange): boolean {
  return change.after.every((state) => {
    const now = readRowState(db, state).values;
    if (now === null && mayBeGone(state)) return true;
    if (state.values === null || now === null) return state.values === now;
    return Object.entries(state.values).every(([name, value]) => name === "club_group" || now[name] === value);
  });
}

/** Whether the places to which sessions would go back are free. */
function arePlacesFree(db: Database, change: RecordChange): boolean {
  const taken = db.sqlite.prepare<[Record<string, unknown>], 1>(
    `SELECT 1 FROM session AS other JOIN session AS mine ON mine.id = :id
     WHERE other.id <> :id AND other.student_id = coalesce(:student_id, mine.student_id)
       AND other.said_club_group = coalesce(:said_club_group, mine.said_club_group)
       AND other.day = coalesce(:day, mine.day) AND other.sequence = coalesce(:sequence, mine.sequence)
       AND other.id NOT IN (SELECT value FROM json_each(:going))`,
  );
  const going = JSON.stringify(change.before.flatMap(({ table, key }) => (table === "session" ? [key.id] : [])));
  const blank = { student_id: null, said_club_group: null, day: null, sequence: null };
  return change.before.every(({ table, key, values }) => {
    if (table !== "session" || values === null) return true;
    const { student_id, said_club_group, day, sequence } = { ...blank, ...values };
    return taken.get({ id: key.id, student_id, said_club_group, day, sequence, going }) === undefined;
  });
}

/** Takes a change back as long as nothing rests on it; the change itself stays on file as undone. */
export function updateChangeUndone(
  db: Database,
  scope: StudentScope,
  changeId: number,
  { who, now }: Omit<ChangeNote, "why">,
): UndoOutcome {
  return inTransaction(db, () => {
    const change = readRecordChanges(db, scope).find((each) => each.id === changeId);
    if (!change) return { kind: "not-there" };
    if (change.undoneAt !== null) return { kind: "undone-before" };
    const by = builtOn(db, change, readAcademyChanges(db, scope));
    if (by !== null) return { kind: "built-on", by };
    if (!isAsLeft(db, change)) return { kind: "built-on", by: "change" };
    if (!arePlacesFree(db, change)) return { kind: "built-on", by: "place" };
    writeRowStates(db, statesBack(db, change));
    placeInGroups(db, scope, change.before);
    grow(db, scope, [change.studentId, change.otherStudentId]);
    db.sqlite.prepare("UPDATE record_change SET undone_at = ?, undone_by = ? WHERE id = ?").run(now, who, changeId);
    return { kind: "undone", studentIds: [change.studentId, change.otherStudentId].flatMap((id) => id ?? []) };
  });
}
