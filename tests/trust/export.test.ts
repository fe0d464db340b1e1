import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, expect, it } from "vitest";
import { loadArchive } from "@/app/_server/archive/load-archive";
import { packArchive } from "@/app/_server/archive/pack-archive";
import { admitToStudent, type Viewer } from "@/app/_server/gate";
import type { Database } from "@/db/client";
import { readArchivedRules } from "@/db/read/archive-rules";
import { insertArchive } from "@/db/write/archive";
import { mergeStudents } from "@/db/write/merge-students";
import { insertCharge } from "@/db/write/people";
import { insertStudent } from "@/db/write/students";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import type { StudentScope } from "@/lib/domain/scope";
import { planArchive } from "@/lib/ingest/plan-archive";
import { readArchive } from "@/lib/ingest/read-archive";
import { type PeopleAcademy, startPeopleAcademy } from "../app/server/people-academy";
import { academyScope, countingStamp, countRows, NOW, openAcademy } from "../db/academy-fixture";
import { insertRow } from "../db/told-fixture";
import { countCases } from "./count-cases";
import { plantKept, plantStudent } from "./export-rows";

// P1: one student's archive holds every row of every table that names the student, and nothing of another's.

const STUDENTS = Array.from({ length: 10 }, (_, at) => `s${at + 1}x`);
const cases = countCases("P1: words of one student's rows found in the student's archive, and in no other", 400);

let people: PeopleAcademy;
let viewer: Viewer;
const own = new Map<string, ReadonlySet<string>>();
const kept = new Set<string>();

beforeAll(async () => {
  people = await startPeopleAcademy();
  const { db, academyId } = people;
  await people.add({ userId: "robin", name: "Robin", roles: ["coach"] });
  const { scope } = people.viewer(people.ownerId);
  const rows = { academy_id: academyId, created_at: NOW };
  insertRow(db, "import_batch", {
    ...{
      ...rows,
      id: "carried",
      file_name: "x.zip",
      content_hash: "x",
      form: "long",
      rows: 0,
      readings: 0,
      answers: "{}",
    },
  });
  insertRow(db, "drill", {
    id: "wall",
    academy_id: academyId,
    name: "Wall",
    fundamental_id: "hinge",
    how: "",
    cautions: "",
  });
  insertRow(db, "reread_draw", {
    ...{ id: "draw", academy_id: academyId, reader: "Robin", level: "b", who: "Robin", day: "2031-03-01" },
    ...{ drawn_at: NOW, finished_on: "2031-03-02", finished_at: NOW },
  });
  for (const [at, id] of STUDENTS.entries()) {
    const bird = { id, alias: `Alias of ${id} qz`, birthYear: 2016, hand: "right", zone: "UTC", clubs: "" } as const;
    insertStudent(db, { ...scope, userId: null }, bird, null, countingStamp(id));
    own.set(id, plantStudent(db, { studentId: id, academyId }, at, "carried"));
    for (const word of plantKept(db, { studentId: id, academyId })) kept.add(word);
    const from = { fromDay: "2020-01-01", untilDay: null, who: "Ada", recordedAt: NOW };
    insertCharge(db, { id: `own-${id}`, studentId: id, coachId: "robin", kind: "own", ...from });
  }
  viewer = people.viewer("robin");
});
afterAll(() => people.remove());

async function textOf(studentId: string): Promise<string> {
  const scope = admitToStudent(viewer, studentId);
  if (!scope) throw new Error(`no ${studentId}`);
  const zip = packArchive(viewer, await loadArchive(viewer, scope));
  return Object.values(unzipSync(zip))
    .map((bytes) => strFromU8(bytes))
    .join("\n");
}

const wordsOf = (text: string): ReadonlySet<string> => new Set(text.match(/zq \S+ of \S+ qz/g));

it("P1: of ten students each archive holds every planted row of its own, audit too, and no word of the nine others", async () => {
  for (const id of STUDENTS) {
    const text = await textOf(id);
    const mine = own.get(id) ?? new Set();
    expect([...mine].filter((word) => !text.includes(word))).toEqual([]);
    expect([...wordsOf(text)].filter((word) => !mine.has(word))).toEqual([]);
    for (const other of STUDENTS.filter((each) => each !== id)) {
      expect(text).not.toContain(`Alias of ${other}`);
      expect(text).not.toMatch(new RegExp(`\\b(film|link|event|hash)-${other}\\b`));
    }
    // What opens the family's page is in no archive, not even as a digest.
    expect(text).not.toContain(`hash-${id}`);
    expect([...kept].filter((word) => text.includes(word))).toEqual([]);
    cases.add(mine.size);
  }
});

it("P1: who turned out to be the same has one archive: what stays under either name is in it", async () => {
  const [from, to] = ["s1x", "s2x"].map((id) => admitToStudent(viewer, id)) as [StudentScope, StudentScope];
  const note = { who: "Robin", why: "the same child", now: NOW };
  expect(mergeStudents(people.db, { from, to }, [], note).kind).toBe("merged");
  const text = await textOf("s2x");
  const both = [...(own.get("s1x") ?? []), ...(own.get("s2x") ?? [])].filter(
    (word) => !word.includes("student.clubs of s1x"),
  );
  expect(both.filter((word) => !text.includes(word))).toEqual([]);
  expect([...wordsOf(text)].filter((word) => !both.includes(word))).toEqual([]);
  cases.add(both.length);
});

it("P1: taken into another academy, an archive brings the record, and no link, look, charge or announcement of the first", async () => {
  const scope = admitToStudent(viewer, "s3x");
  if (!scope) throw new Error("no student");
  const read = readArchive(packArchive(viewer, await loadArchive(viewer, scope)));
  if (read.kind !== "archive") throw new Error(JSON.stringify(read));
  const db = await openAcademy();
  const rules = readArchivedRules(db, academyScope());
  const onFile = { students: [], rules, grouping: SHORT_LIST, sessions: [], others: 0 };
  const { plan } = planArchive(read.archive, onFile, { fileName: "x.zip", contentHash: "h" }, new Map());
  if (!plan) throw new Error("something stands in the way");
  const there = ["charge", "family_link", "family_opening", "family_request", "record_view", "retention_notice"];
  const counts = (of: Database) => [...there, "record_change"].map((table) => [table, countRows(of, table)]);
  const before = counts(db);
  expect(insertArchive(db, academyScope(), plan, { ...countingStamp("new"), door: "archive" }).kind).toBe("imported");
  expect(countRows(db, "event")).toBe(1);
  expect(counts(db)).toEqual(before);
  db.close();
});
