import { randomUUID } from "node:crypto";
import { zipSync } from "fflate";
import type { Database } from "@/db/client";
import { ROWS_OF_STUDENT } from "@/db/read/student-rows";

// A student with a row in every table that can hold one, every text of which holds one word that nobody else's has.

/** A student as planted: the word in every text, and every id. */
export interface Planted {
  readonly studentId: string;
  readonly alias: string;
  readonly word: string;
  readonly ids: readonly string[];
}

interface Column {
  readonly name: string;
  readonly type: string;
  readonly pk: number;
}

/** Others' rows that a student's rows may point at, by table. */
type Others = Readonly<Record<string, string>>;

function columnsOf(db: Database, table: string): Column[] {
  return db.sqlite.prepare<[string], Column>("SELECT name, type, pk FROM pragma_table_info(?)").all(table);
}

function parentsOf(db: Database, table: string): Map<string, string> {
  const keys = db.sqlite
    .prepare<[string], { from: string; table: string }>('SELECT "from", "table" FROM pragma_foreign_key_list(?)')
    .all(table);
  return new Map(keys.map((key) => [key.from, key.table]));
}

function insertRow(db: Database, table: string, values: Readonly<Record<string, unknown>>): string | number {
  const names = Object.keys(values);
  const sql = `INSERT INTO ${table} (${names.join(", ")}) VALUES (${names.map((name) => `:${name}`).join(", ")})`;
  const { lastInsertRowid } = db.sqlite.prepare(sql).run({ ...values });
  return typeof values.id === "string" ? values.id : Number(lastInsertRowid);
}

/** A row of a table with the word in every text, pointing at the student's own rows, or at the others'. */
function plantRow(db: Database, table: string, word: string, rows: Map<string, string | number>, others: Others): void {
  const parents = parentsOf(db, table);
  const values: Record<string, unknown> = {};
  for (const { name, type, pk } of columnsOf(db, table)) {
    const parent = parents.get(name);
    if (name === "merged_into" || name === "voided_at") continue;
    if (parent !== undefined) values[name] = rows.get(parent) ?? others[parent] ?? null;
    else if (name === "id" && pk === 1 && type.toLowerCase() === "text") values[name] = `${table}-${randomUUID()}`;
    else if (name === "id") continue;
    else if (name === "other_student_id") values[name] = null;
    else if (type.toLowerCase() === "text") values[name] = `${word}-${table}-${name}`;
    else values[name] = 3;
  }
  rows.set(table, insertRow(db, table, values));
}

/** Everything that others' rows hold about a student. */
function plantElsewhere(db: Database, planted: Planted, academyId: string, rows: Map<string, string | number>): void {
  const { alias, word, studentId } = planted;
  const session = String(rows.get("session"));
  const put = (sql: string, ...values: unknown[]) => db.sqlite.prepare(sql).run(...values);
  const receipt = "INSERT INTO form_receipt (academy_id, key, kind, outcome, saved_at) VALUES (?, ?, ?, ?, 'x')";
  put(receipt, academyId, randomUUID(), `session-form ${studentId}`, "{}");
  put(
    receipt,
    academyId,
    randomUUID(),
    "group-form",
    JSON.stringify({ answer: { saved: [{ id: session }, { id: "o" }] } }),
  );
  const coding = "INSERT INTO note_coding (academy_id, phrase, coding, who, recorded_at) VALUES (?, ?, '{}', 'w', 'x')";
  put(coding, academyId, `@${session} heavy`);
  put("INSERT OR REPLACE INTO roster_list VALUES (?, 'x', 'p', 'd', ?)", academyId, `[${JSON.stringify(studentId)}]`);
  const seen = "INSERT INTO seen (academy_id, viewer, seen_at, as_of, body) VALUES (?, 'v', 'x', 'x', ?)";
  put(seen, academyId, JSON.stringify([`${studentId}/hinge/iron`, "o/hinge/iron"]));
  put("INSERT OR REPLACE INTO preference VALUES (?, 'v', 'last', ?)", academyId, studentId);
  const answers = JSON.stringify({
    answers: [
      { id: `student:${alias}`, option: "new" },
      { id: "sign", option: "as-is" },
    ],
  });
  const batch = `INSERT INTO import_batch (id, academy_id, file_name, content_hash, form, rows, readings, answers, created_at)
    VALUES (?, ?, ?, ?, 'long', 1, 1, ?, 'x')`;
  put(batch, randomUUID(), academyId, `${alias.toLowerCase()}_2031.csv`, randomUUID(), answers);
  const source = "INSERT INTO import_source VALUES (?, ?, ?, ?, 'x')";
  put(source, academyId, randomUUID(), `${alias}.csv`, JSON.stringify([[`who:${alias}`, "x"]]));
  const draft = "INSERT INTO draft (id, academy_id, kind, body, updated_at) VALUES (?, ?, ?, ?, 'x')";
  const entries = [
    [`r.1.${studentId}.hinge`, `${word} 90`],
    ["r.1.o.hinge", "91"],
  ];
  put(draft, randomUUID(), academyId, "group-form", JSON.stringify({ entries, aside: { entries } }));
  const csv = `student,value\n${alias},3 ${word}\n`;
  const utf16 = Buffer.from(csv, "utf16le");
  const zip = Buffer.from(zipSync({ "x.csv": Buffer.from(csv) }, { level: 0 }));
  for (const [index, bytes] of [Buffer.from(csv), utf16, Buffer.from(utf16).swap16(), zip].entries()) {
    const id = randomUUID();
    put(draft, `${id}.file`, academyId, index % 2 === 0 ? "import-file" : "kept import-file", bytes.toString("base64"));
    put(draft, id, academyId, index % 2 === 0 ? "import" : "kept import", '{"fileName":"x.csv","answers":[]}');
  }
  const change = `INSERT INTO record_change (academy_id, kind, student_id, before, after, who, why, changed_at)
    VALUES (?, 'move-session', 'o', ?, '{"rows":[]}', 'w', 'y', 'x')`;
  put(
    change,
    academyId,
    JSON.stringify([{ table: "session", key: { id: session }, values: { student_id: studentId } }]),
  );
}

/** Another student, `o`, a coach, a drill, a test by the lot and a draw: what stays. */
export function plantOthers(db: Database, academyId: string): Others {
  const others: Record<string, string> = { academy: academyId };
  const put = (sql: string, ...values: unknown[]) => db.sqlite.prepare(sql).run(...values);
  put(
    "INSERT INTO user (id, name, email, email_verified, created_at, updated_at) VALUES ('coach', 'C', 'c@x', 0, 0, 0)",
  );
  put("INSERT INTO person (user_id, academy_id, added_at, added_by) VALUES ('coach', ?, 'x', 'x')", academyId);
  put(
    "INSERT INTO drill (id, academy_id, name, fundamental_id, how, cautions) VALUES ('drill', ?, 'Gate', 'hinge', 'how', '')",
    academyId,
  );
  put(
    `INSERT INTO fair_test (id, academy_id, fundamental_id, first_drill_id, second_drill_id, least, spread, students, looks,
       days, seed, day, who, recorded_at) VALUES ('lot', ?, 'hinge', 'drill', 'drill', 4, 5, 40, 2, 42, 'ab', 'x', 'w', 'x')`,
    academyId,
  );
  const student = `INSERT INTO student (id, academy_id, alias, hand, zone, clubs, created_at)
    VALUES ('o', ?, 'Other', 'right', 'UTC', '', 'x')`;
  put(student, academyId);
  return { ...others, user: "coach", person: "coach", drill: "drill", fair_test: "lot" };
}

/**
 * Plants a student in every table, under ids of 36 random places and more.
 *
 * @param word of letters alone; the alias is made of it
 */
export function plantStudent(db: Database, academyId: string, word: string, others: Others): Planted {
  const rows = new Map<string, string | number>();
  const studentId = `student-${randomUUID()}`;
  const alias = `Alias${word}`;
  const person = { academy_id: academyId, hand: "right", zone: "UTC", clubs: word, created_at: "x" };
  rows.set("student", insertRow(db, "student", { id: studentId, alias, ...person }));
  const draw = `draw-${randomUUID()}`;
  const drawn = { academy_id: academyId, reader: "r", level: "a", who: "w", day: "x", drawn_at: "x" };
  rows.set("reread_draw", insertRow(db, "reread_draw", { id: draw, ...drawn }));
  const batch = {
    academy_id: academyId,
    file_name: `${word}.csv`,
    content_hash: word,
    form: "long",
    rows: 1,
    readings: 1,
  };
  const batchId = `batch-${randomUUID()}`;
  rows.set("import_batch", insertRow(db, "import_batch", { id: batchId, ...batch, answers: "{}", created_at: "x" }));
  const tables = Object.keys(ROWS_OF_STUDENT)
    .filter((table) => table !== "student")
    .reverse();
  // A link before what hangs on it; a drill given before its practice; the rest as they can go, backwards.
  for (const table of ["family_link", "drill_assignment", "event", "swing", "reading", "read_back"])
    if (table !== "swing" && table !== "reading") plantRow(db, table, word, rows, others);
  for (const table of tables) if (!rows.has(table)) plantRow(db, table, word, rows, others);
  // Whoever turned out to be the same one.
  const twin = `student-${randomUUID()}`;
  insertRow(db, "student", { id: twin, alias: `${alias}s`, ...person, merged_into: studentId });
  const ids = [
    studentId,
    twin,
    draw,
    batchId,
    ...[...rows.values()].flatMap((id) => (typeof id === "string" ? [id] : [])),
  ];
  const planted = { studentId, alias, word, ids: [...new Set(ids)] };
  plantElsewhere(db, planted, academyId, rows);
  return planted;
}
