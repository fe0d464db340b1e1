import type { RowState } from "@/lib/domain/record-change";
import { SIDED_SIGHTINGS } from "@/lib/domain/session-change";
import type { Database } from "../client";

/** Whose rows a session's become, and which fundamentals' values were read with the other hand's sign; none: all stand. */
export interface NewHome {
  readonly studentId: string;
  readonly turned: readonly string[];
}

/** Of which swings, by number; null: of the whole session. */
type SwingChoice = { readonly sessionId: string; readonly swings: readonly number[] | null };

type Numbered = Readonly<Record<string, string | number>>;

function rowsOf(db: Database, sql: string, choice: SwingChoice): Numbered[] {
  const args = { sessionId: choice.sessionId, swings: choice.swings === null ? null : JSON.stringify(choice.swings) };
  return db.sqlite.prepare<[typeof args], Numbered>(sql).all(args);
}

const OF_THE_SWINGS = `swing.session_id = :sessionId
  AND (:swings IS NULL OR swing.number IN (SELECT value FROM json_each(:swings)))`;

const negated = (value: number): number => (value === 0 ? 0 : -value);

/** Readings by whomever, with their corrections, in the columns `columns`; a turned fundamental's values change their sign. */
export function movedReadings(
  db: Database,
  choice: SwingChoice,
  { turned }: Pick<NewHome, "turned">,
  columns: Numbered,
): RowState[] {
  const readings = rowsOf(
    db,
    `SELECT reading.id, reading.fundamental_id, reading.value FROM reading JOIN swing ON swing.id = reading.swing_id
     WHERE ${OF_THE_SWINGS} ORDER BY reading.id`,
    choice,
  );
  const corrections = rowsOf(
    db,
    `SELECT correction.id, reading.fundamental_id, correction.value FROM correction
       JOIN reading ON reading.id = correction.reading_id JOIN swing ON swing.id = reading.swing_id
     WHERE correction.value IS NOT NULL AND ${OF_THE_SWINGS} ORDER BY correction.id`,
    choice,
  );
  const turn = (row: Numbered) =>
    turned.includes(String(row.fundamental_id)) && typeof row.value === "number"
      ? { value: negated(row.value) }
      : undefined;
  return [
    ...readings.map((row) => ({ table: "reading", key: { id: Number(row.id) }, values: { ...columns, ...turn(row) } })),
    ...corrections.flatMap((row) => {
      const values = turn(row);
      return values ? [{ table: "correction", key: { id: Number(row.id) }, values }] : [];
    }),
  ];
}

/** What was drawn to be read again goes with its swings. */
export function movedRereads(db: Database, choice: SwingChoice, columns: Numbered): RowState[] {
  return rowsOf(
    db,
    `SELECT draw_id, place FROM reread_item JOIN swing ON swing.id = reread_item.swing_id
     WHERE ${OF_THE_SWINGS} ORDER BY draw_id, place`,
    choice,
  ).map((key) => ({ table: "reread_item", key, values: columns }));
}

/** The sightings of a session's films with the other hand's sign. */
export function turnedSightings(db: Database, sessionId: string): RowState[] {
  const columns = SIDED_SIGHTINGS.join(", ");
  return db.sqlite
    .prepare<[string], Record<string, string | number | null>>(
      `SELECT view, ${columns} FROM capture WHERE session_id = ? ORDER BY view`,
    )
    .all(sessionId)
    .map(({ view, ...seen }) => ({
      table: "capture",
      key: { session_id: sessionId, view: String(view) },
      values: Object.fromEntries(
        Object.entries(seen).map(([name, value]) => [name, typeof value === "number" ? negated(value) : null]),
      ),
    }));
}

/** The place of a session among those of its day, said group and student that nothing else holds. */
export function freeSequence(
  db: Database,
  place: { readonly studentId: string; readonly clubGroup: string; readonly day: string; readonly sessionId: string },
  wished: number,
): number {
  const taken = db.sqlite
    .prepare<[typeof place], number>(
      `SELECT sequence FROM session WHERE student_id = :studentId AND said_club_group = :clubGroup AND day = :day
         AND id <> :sessionId`,
    )
    .pluck()
    .all(place);
  return taken.includes(wished) ? Math.max(...taken) + 1 : wished;
}

/** Every row that goes with a whole session to another student. */
export function movedSession(db: Database, sessionId: string, home: NewHome): RowState[] {
  const row = db.sqlite
    .prepare<[string], { day: string; said: string; sequence: number }>(
      "SELECT day, said_club_group AS said, sequence FROM session WHERE id = ?",
    )
    .get(sessionId);
  if (!row) throw new Error(`no such session: ${sessionId}`);
  const { studentId } = home;
  const place = { studentId, clubGroup: row.said, day: row.day, sessionId };
  const mine = { student_id: studentId };
  const looks = db.sqlite
    .prepare<[string], Numbered>("SELECT session_id, fundamental_id, club_group FROM look_noise WHERE session_id = ?")
    .all(sessionId);
  const carried = db.sqlite
    .prepare<[string], Numbered>("SELECT session_id, fundamental_id, club_group FROM carried_look WHERE session_id = ?")
    .all(sessionId);
  const choice = { sessionId, swings: null };
  return [
    {
      table: "session",
      key: { id: sessionId },
      values: { ...mine, sequence: freeSequence(db, place, row.sequence) },
    },
    ...movedReadings(db, choice, home, mine),
    ...looks.map((key) => ({ table: "look_noise", key, values: mine })),
    ...carried.map((key) => ({ table: "carried_look", key, values: mine })),
    ...movedRereads(db, choice, mine),
    ...(home.turned.length > 0 ? turnedSightings(db, sessionId) : []),
  ];
}
