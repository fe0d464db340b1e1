import type { Database } from "@/db/client";
import { builtRoutes } from "../e2e/routes";
import { WRENS } from "./access-askers";
import { withDemo } from "./demo-roles";
import { type Cell, PRIVATE } from "./planted-columns";
import { addedRows, type Value, wordOf } from "./planted-rows";

/** A word that stands in one column and nowhere else. */
export interface PlantedWord {
  readonly column: string;
  readonly cell: Cell;
}

/** The planted words that stand in a text. */
export function wordsIn(text: string): ReadonlySet<string> {
  return new Set([...text.matchAll(/zq\d{3}qz|\bribs\b/g)].map(([word]) => word));
}

/** Every planted word with whose it is. */
export function plantedWords(): ReadonlyMap<string, PlantedWord> {
  return new Map(Object.entries(PRIVATE).map(([column, cell]) => [wordOf(column), { column, cell }]));
}

const OF = `student_id = '${WRENS}'`;

/** Which rows bear the word of a column; absent: the row that is added to the table. */
const ROWS: Readonly<Record<string, string>> = {
  student: `id = '${WRENS}'`,
  capture: "session_id = :session",
  swing: "session_id = :session",
  reading: "session_id = :session AND reread = 0",
  asking: OF,
  drill_assignment: OF,
  practice: OF,
  read_back: OF,
  read_back_item: `read_back_id IN (SELECT id FROM read_back WHERE ${OF})`,
  consent: OF,
  charge: OF,
  session: "id = :session",
  correction: "reading_id IN (SELECT id FROM reading WHERE session_id = :session)",
  import_batch: "id = 'imported-for-the-tests'",
  account: "user_id = 'gull'",
  user: "id = 'lark'",
  "event.note": `${OF} AND kind <> 'injury'`,
  "event.who": OF,
  "session.reader": OF,
};

/** Written with the rest of their row. */
const WHOLE = [
  "record_view.who",
  "record_view.place",
  "event.place",
  "record_change.before",
  "record_change.after",
  "draft.body",
  "form_receipt.outcome",
];

interface Undoing {
  undo(): void;
}

function update(db: Database, table: string, column: string, where: string, value: string): Undoing {
  const session = db.sqlite.prepare<[], string>(`SELECT id FROM session WHERE ${OF} LIMIT 1`).pluck().get() ?? "";
  const given = where.includes(":session") ? { session } : {};
  const before = db.sqlite
    .prepare<[object], { rowid: number; value: Value }>(
      `SELECT rowid AS rowid, ${column} AS value FROM ${table} WHERE ${where}`,
    )
    .all(given);
  if (before.length === 0) throw new Error(`${table}.${column}: no row to plant in`);
  db.sqlite.prepare(`UPDATE ${table} SET ${column} = :value WHERE ${where}`).run({ ...given, value });
  return {
    undo: () =>
      withDemo((again) => {
        const back = again.sqlite.prepare(`UPDATE ${table} SET ${column} = ? WHERE rowid = ?`);
        for (const row of before) back.run(row.value, row.rowid);
      }),
  };
}

function insert(
  db: Database,
  table: string,
  values: Readonly<Record<string, Value>>,
): Undoing & { readonly rowid: number } {
  const names = Object.keys(values);
  const rowid = Number(
    db.sqlite
      .prepare(`INSERT INTO ${table} (${names.join(", ")}) VALUES (${names.map((name) => `:${name}`).join(", ")})`)
      .run(values).lastInsertRowid,
  );
  return {
    rowid,
    undo: () => withDemo((again) => again.sqlite.prepare(`DELETE FROM ${table} WHERE rowid = ?`).run(rowid)),
  };
}

function plantAll(db: Database, done: Undoing[]): void {
  const rows = new Map<string, number>();
  for (const [table, values] of addedRows(db)) {
    const made = insert(db, table, values);
    rows.set(table, made.rowid);
    done.push(made);
  }
  for (const name of Object.keys(PRIVATE).filter((each) => !WHOLE.includes(each) && each !== "sign_in_try.key")) {
    const [table = "", column = ""] = name.split(".");
    const where = ROWS[name] ?? ROWS[table] ?? `rowid = ${rows.get(table)}`;
    done.push(update(db, table, column, where, wordOf(name)));
  }
  // A reading counts by the reader of its session.
  done.push(update(db, "reading", "reader", `${OF} AND reread = 0`, wordOf("session.reader")));
}

/** Plants a word in each column of somebody's data, about a student of Wren's, and returns what takes all of it back. */
export function plantWords(): () => void {
  // What the addresses name is put there by whoever makes them.
  builtRoutes();
  return withDemo((db) => {
    const done: Undoing[] = [];
    const takeBack = () => {
      for (const each of done.reverse()) each.undo();
    };
    try {
      plantAll(db, done);
    } catch (error) {
      takeBack();
      throw error;
    }
    return takeBack;
  });
}
