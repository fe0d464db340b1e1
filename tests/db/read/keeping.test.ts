import { describe, expect, it } from "vitest";
import type { Database } from "@/db/client";
import { readRecordTimes } from "@/db/read/keeping";
import { academyScope, openAcademy } from "../academy-fixture";

// What counts as an entry: a record is idle only once nothing of it was entered for as long.

/** Columns that say when somebody entered something. */
const ENTRY =
  /^(?:recorded|created|entered|changed|corrected|made|renewed|drawn|updated|announced|asked|settled|viewed|opened|undone|voided|revoked|finished|dropped|reminded|ended|held|fitted|seen)_at$/;

/** Columns of a student's rows that are no entry, and why. */
const NO_ENTRY: Readonly<Record<string, string>> = {
  "student created_at": "counted beside the others",
  "retention_notice announced_at": "the program's own",
  "retention_notice held_at": "says by itself that the record is kept",
  "record_view viewed_at": "looking at a record is no use of it",
  "family_request asked_at": "the family's, and the record waits for its answer by itself",
  "family_request settled_at": "an answer, which the record outlasts by itself",
  "family_opening opened_at": "the family's look",
};
/** What ends or takes back something is no entry of its own: what it ended was. */
const ENDS = /^(?:undone|voided|revoked|finished|dropped|reminded|ended)_at$/;

interface Column {
  readonly name: string;
  readonly type: string;
  readonly notnull: number;
  readonly pk: number;
}

function columnsOf(db: Database, table: string): Column[] {
  return (db.sqlite.pragma(`table_info(${table})`) as Column[]).map((each) => ({
    ...each,
    type: each.type.toLowerCase(),
  }));
}

function ownersOf(db: Database, table: string): { readonly table: string; readonly from: string }[] {
  return db.sqlite.pragma(`foreign_key_list(${table})`) as { table: string; from: string }[];
}

function tablesOf(db: Database): string[] {
  return db.sqlite
    .prepare<[], string>("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE '%\\_\\_%' ESCAPE '\\'")
    .pluck()
    .all();
}

/** By which column the rows of a table are a student's, and whose: the student, or another row of theirs. */
function ownerOf(db: Database, table: string): { readonly key: string; readonly of: string } | null {
  if (columnsOf(db, table).some(({ name }) => name === "student_id")) return { key: "student_id", of: "student" };
  const owner = ownersOf(db, table).find(({ table: of }) =>
    ["session", "swing", "reading", "event", "drill_assignment"].includes(of),
  );
  return owner ? { key: owner.from, of: owner.table } : null;
}

/** Puts a row into a table with everything that it must have. */
function put(db: Database, table: string, values: Readonly<Record<string, unknown>>): void {
  const needed = columnsOf(db, table).filter(
    ({ name, notnull, pk, type }) => name in values || (notnull === 1 && !(pk === 1 && type === "integer")),
  );
  const value = ({ name, type }: Column): unknown => values[name] ?? (type === "text" ? "" : 0);
  const names = needed.map(({ name }) => name);
  db.sqlite
    .prepare(`INSERT INTO ${table} (${names.join(", ")}) VALUES (${names.map(() => "?").join(", ")})`)
    .run(...needed.map(value));
}

describe("when anything was last entered of a student", () => {
  it("is the latest of every entry of every table of theirs", async () => {
    const bare = await openAcademy();
    const all = tablesOf(bare).flatMap((table) => {
      const owner = ownerOf(bare, table);
      if (owner === null) return [];
      return columnsOf(bare, table)
        .filter(({ name }) => ENTRY.test(name) && !ENDS.test(name) && !(`${table} ${name}` in NO_ENTRY))
        .map(({ name }) => ({ table, column: name, owner }));
    });
    bare.close();
    expect(all.length).toBeGreaterThan(15);
    for (const { table, column, owner } of all) {
      const db = await openAcademy();
      db.sqlite.pragma("foreign_keys = OFF");
      const before = readRecordTimes(db, academyScope()).find(({ studentId }) => studentId === "s1");
      const at = "2044-04-04T04:04:04.000Z";
      const id = columnsOf(db, owner.of).find(({ name }) => name === "id")?.type === "integer" ? 99 : "owner";
      if (owner.of !== "student") put(db, owner.of, { id, student_id: "s1" });
      put(db, table, { [owner.key]: owner.of === "student" ? "s1" : id, [column]: at });
      const after = readRecordTimes(db, academyScope());
      expect(after.find(({ studentId }) => studentId === "s1")?.lastEntered, `${table} ${column}`).toBe(at);
      expect(after.find(({ studentId }) => studentId === "s2")?.lastEntered).not.toBe(at);
      expect(before?.lastEntered).not.toBe(at);
      db.close();
    }
  });
});
