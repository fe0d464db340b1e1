import { getTableColumns, is } from "drizzle-orm";
import { getTableConfig, SQLiteTable } from "drizzle-orm/sqlite-core";
import { describe, expect, it } from "vitest";
import type { Database } from "@/db/client";
import { readErasedGroup } from "@/db/read/erased-group";
import { ROWS_OF_STUDENT, readBatchesOf, readNaming, readStudentRowCounts, SCRUBBED } from "@/db/read/student-rows";
import * as coaching from "@/db/schema";
import * as entry from "@/db/schema-entry";
import * as people from "@/db/schema-people";
import * as plans from "@/db/schema-plans";
import * as privacy from "@/db/schema-privacy";
import * as rereads from "@/db/schema-rereads";
import * as work from "@/db/schema-work";
import { type EraseDoor, eraseStudent } from "@/db/write/erase-student";
import { countRows, NOW, studentScope } from "../academy-fixture";
import { openFilledAcademy } from "../filled-academy";

/** Tables that hold nothing of a student, and why; a new one is decided upon here, or its rows go. */
const NOBODYS: Readonly<Record<string, string>> = {
  academy: "the academy's own facts",
  user: "who works here",
  auth_session: "who works here",
  account: "who works here",
  verification: "who works here",
  two_factor: "who works here",
  person: "who works here",
  person_role: "who works here",
  assistance: "who works here",
  invitation: "who is to work here",
  sign_in_try: "digests of addresses of who works here",
  access_token: "keys of programs",
  own_fundamental: "the academy's catalogue",
  drill: "the academy's catalogue",
  owning_rule: "the academy's rule",
  fair_test: "a plan of the academy, with a seed",
  fair_step: "figures over many, as they were said",
  club_regrouping: "counts and groups",
  noise_model: "a fit to many, nobody's data in it",
  reader_error_fit: "a fit to many, nobody's data in it",
  erasure: "counts, and no id of the student",
};

const tables = [coaching, entry, people, plans, privacy, rereads, work]
  .flatMap((module) => Object.values(module))
  .filter((each): each is SQLiteTable => is(each, SQLiteTable))
  .map((table) => ({ name: getTableConfig(table).name, columns: Object.values(getTableColumns(table)) }));

const door: EraseDoor = {
  ...{ erasureId: "erasure-1", now: NOW, who: "Director", reason: "asked", blank: "(blank)" },
  mayHold: () => false,
  beforeCommit: () => {},
};

describe("what a student's data can lie in", () => {
  it("every table is decided upon: its rows go, it is searched for names, or it is nobody's", () => {
    const decided = new Set([...Object.keys(ROWS_OF_STUDENT), ...Object.keys(SCRUBBED), ...Object.keys(NOBODYS)]);
    expect(tables.map(({ name }) => name).filter((name) => !decided.has(name))).toEqual([]);
    expect(tables.length).toBe(decided.size);
  });

  it("a table that is nobody's names no student, session, swing, reading or link in any column", () => {
    const naming = tables
      .filter(({ name }) => Object.hasOwn(NOBODYS, name))
      .flatMap(({ name, columns }) => columns.map((column) => `${name}.${column.name}`))
      .filter((column) => /\.(student|session|swing|reading|link|other_student)_id$|alias|\.note$/.test(column));
    expect(naming).toEqual([]);
  });

  it("every text of a table that is searched is searched, or is who, when, what kind or whose", () => {
    const plain =
      /_id$|^id$|_at$|^(who|kind|name|viewer|key|phrase|as_of|policy_version|input_digest|fingerprint|form|door)$/;
    const forgotten = Object.entries(SCRUBBED).flatMap(([table, searched]) => {
      if (table === "record_change" || table === "draft" || table === "reread_draw") return [];
      const columns = tables.find(({ name }) => name === table)?.columns ?? [];
      return columns
        .filter(({ dataType, name }) => dataType === "string" && !plain.test(name) && !/^(undone_by)$/.test(name))
        .filter(({ name }) => !(searched as readonly string[]).includes(name))
        .map(({ name }) => `${table}.${name}`);
    });
    expect(forgotten).toEqual([]);
  });
});

/** An academy with a row in every table, and one form about the student. */
async function openWithDraft(): Promise<Database> {
  const db = await openFilledAcademy();
  db.sqlite.exec(`INSERT INTO draft (id, academy_id, kind, student_id, body, updated_at)
    VALUES ('d1', 'a1', 'session-form s1', 's1', '{}', '')`);
  return db;
}

describe("eraseStudent", () => {
  it("takes every row of the student, as counted before, and none of the others", async () => {
    const db = await openWithDraft();
    const group = readErasedGroup(db, studentScope());
    const before = readStudentRowCounts(db, group);
    expect(Object.entries(before).filter(([, count]) => count === 0)).toEqual([]);
    const others = db.sqlite.prepare("SELECT count(*) FROM student").pluck().get();
    const erased = eraseStudent(db, group, door);
    expect(erased?.rows).toEqual(before);
    expect(Object.values(readStudentRowCounts(db, group)).every((count) => count === 0)).toBe(true);
    expect(db.sqlite.prepare("SELECT count(*) FROM student").pluck().get()).toBe(Number(others) - before.student);
    expect(db.sqlite.pragma("foreign_key_check")).toEqual([]);
  });

  it("what it throws at the end undoes all of it", async () => {
    const db = await openWithDraft();
    const group = readErasedGroup(db, studentScope());
    const before = readStudentRowCounts(db, group);
    const failing = {
      ...door,
      beforeCommit: () => {
        throw new Error("the disk is full");
      },
    };
    expect(() => eraseStudent(db, group, failing)).toThrow("the disk is full");
    expect(readStudentRowCounts(db, group)).toEqual(before);
    expect(countRows(db, "erasure")).toBe(1);
  });

  it("of somebody who isn't on file it takes nothing and says so", async () => {
    const db = await openWithDraft();
    expect(eraseStudent(db, readErasedGroup(db, studentScope("nobody")), door)).toBeNull();
    expect(readNaming(db, readErasedGroup(db, studentScope("nobody"))).ids.size).toBe(0);
    expect(readBatchesOf(db, readErasedGroup(db, studentScope("nobody")))).toEqual([]);
  });
});
