import { inTransaction, openDatabase } from "@/db/client";

/** Tables with the rows of a student, parents first; each is copied with the ids of the copy. */
const TABLES = [
  "student",
  "consent",
  "charge",
  "session",
  "capture",
  "swing",
  "reading",
  "look_noise",
  "analysis",
] as const;

/** Columns that hold an id of the student's: a copy's ends with its own mark. */
const NAMED = ["id", "student_id", "session_id"];

const NUMBERED = ["swing", "reading"];

function copyTable(
  sqlite: ReturnType<typeof openDatabase>["sqlite"],
  table: string,
): (mark: string, shift: number) => void {
  const columns = sqlite
    .prepare<[string], { name: string; type: string }>("SELECT name, type FROM pragma_table_info(?)")
    .all(table);
  const value = ({ name, type }: { readonly name: string; readonly type: string }): string => {
    if (table === "reading" && name === "swing_id") return "swing_id + @shift";
    if (NUMBERED.includes(table) && name === "id") return "id + @shift";
    if (NAMED.includes(name) && type.toUpperCase() === "TEXT") return `"${name}" || @mark`;
    if (table === "student" && name === "alias") return "alias || ' ' || @number";
    // A judged body names its student, and its track by the student.
    if (table === "analysis" && (name === "summary" || name === "body"))
      return `replace("${name}", '"' || student_id, '"' || student_id || @mark)`;
    return `"${name}"`;
  };
  const key =
    table === "student" ? "id" : columns.some(({ name }) => name === "student_id") ? "student_id" : "session_id";
  const names = columns.map(({ name }) => `"${name}"`).join(", ");
  const statement = sqlite.prepare<[{ mark: string; shift: number; number: string }]>(
    `INSERT INTO "${table}" (${names}) SELECT ${columns.map(value).join(", ")} FROM "${table}" WHERE instr("${key}", '_') = 0
     AND @mark <> '' AND @shift >= 0 AND @number <> ''`,
  );
  return (mark, shift) => statement.run({ mark, shift, number: mark.slice(1) });
}

/**
 * Makes a judged academy of so many students out of a small one: each copy has the films and the judged bodies of its
 * model, under ids and an alias of its own. Only the roster's list is to be made anew.
 */
export function multiplyStudents(file: string, wanted: number): { readonly students: number; readonly tracks: number } {
  const db = openDatabase(file);
  try {
    const { sqlite } = db;
    const number = (sql: string): number => sqlite.prepare<[], number>(sql).pluck().get() ?? 0;
    const models = number("SELECT count(*) FROM student");
    const most = number("SELECT max((SELECT max(id) FROM swing), (SELECT max(id) FROM reading))");
    sqlite.pragma("foreign_keys = OFF");
    inTransaction(db, () => {
      const copies = TABLES.map((table) => copyTable(sqlite, table));
      for (let copy = 1; copy * models < wanted; copy++) for (const make of copies) make(`_${copy}`, copy * most);
      sqlite
        .prepare("DELETE FROM student WHERE id IN (SELECT id FROM student ORDER BY length(id) DESC, id DESC LIMIT ?)")
        .run(Math.max(0, number("SELECT count(*) FROM student") - wanted));
      for (const table of TABLES.slice(1)) {
        const key = ["capture", "swing"].includes(table) ? "session_id" : "student_id";
        const of = key === "session_id" ? "session" : "student";
        sqlite.prepare(`DELETE FROM "${table}" WHERE "${key}" NOT IN (SELECT id FROM ${of})`).run();
      }
      sqlite.prepare("DELETE FROM roster_list").run();
      // As if its noise had been learned from all of them: the first change would learn it anew otherwise.
      sqlite.prepare("UPDATE noise_model SET pool_sessions = pool_sessions * ?").run(Math.ceil(wanted / models));
    });
    sqlite.pragma("foreign_keys = ON");
    sqlite.exec("ANALYZE");
    return { students: number("SELECT count(*) FROM student"), tracks: number("SELECT count(*) FROM analysis") };
  } finally {
    db.close();
  }
}
