import { beforeAll, expect, it } from "vitest";
import type { Database } from "@/db/client";
import { readLatestPains } from "@/db/read/practice";
import type { PainScope } from "@/lib/domain/scope";
import { openFilledAcademy } from "../filled-academy";

let db: Database;
beforeAll(async () => {
  db = await openFilledAcademy();
  const add = db.sqlite.prepare(
    `INSERT INTO practice (id, student_id, day, pain, source, who, recorded_at, voided_at) VALUES (?, 's1', ?, ?, 'family', 'the family', ?, ?)`,
  );
  add.run("h1", "2031-01-04", "back", "2031-01-04T10:00:00Z", null);
  add.run("h2", "2031-01-06", "wrist", "2031-01-06T10:00:00Z", null);
  add.run("h3", "2031-01-08", "knee", "2031-01-08T10:00:00Z", "2031-01-08T11:00:00Z");
});

const proof = (studentId: string) => ({ studentId }) as PainScope;
const read = (from: string, ...ids: string[]) =>
  readLatestPains(db, ids.map(proof), from).map(({ id, place, studentId }) => `${studentId} ${id} ${place}`);

it("the latest word of each student that stands, from a day on; nothing without a proof", () => {
  expect(read("2031-01-01", "s1")).toEqual(["s1 h2 wrist"]);
  expect(read("2031-01-06", "s1", "s9")).toEqual(["s1 h2 wrist"]);
  expect(read("2031-01-07", "s1")).toEqual([]);
  expect(read("2031-01-01")).toEqual([]);
  expect(read("2031-01-01", "s9")).toEqual([]);
});
