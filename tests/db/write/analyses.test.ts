import { describe, expect, test } from "vitest";
import { digestTables } from "@/db/backup";
import type { Database } from "@/db/client";
import type { AnalysisKey, KeptAnalysis } from "@/db/read/analyses";
import { readCurrentSummaries } from "@/db/read/current-analyses";
import { readDraft } from "@/db/read/drafts";
import { readRosterList } from "@/db/read/roster-lists";
import { readLastSeen } from "@/db/read/seen";
import { deleteStaleAnalyses, insertAnalysis } from "@/db/write/analyses";
import { deleteDraft, insertDraft } from "@/db/write/drafts";
import { insertRosterList } from "@/db/write/roster-lists";
import { insertSeen } from "@/db/write/seen";
import { insertHeight } from "@/db/write/students";
import { academyScope, countRows, NOW, openAcademy, revisionOf, studentScope } from "../academy-fixture";

const key = { fundamentalId: "hinge", clubGroup: "iron", asOf: "2031-02-01", policyVersion: "p1" };
const made = { ...key, noiseModel: "m1", dataRevision: 0, summary: "small, not JSON {", body: "whole" };
const scope = academyScope();

/** What the table holds under a key, fresh or stale. */
function readKept(db: Database, studentId: string, of: AnalysisKey): KeptAnalysis | undefined {
  return db.sqlite
    .prepare<[AnalysisKey & { studentId: string }], KeptAnalysis>(
      `SELECT fundamental_id AS fundamentalId, club_group AS clubGroup, as_of AS asOf, policy_version AS policyVersion,
         noise_model AS noiseModel, data_revision AS dataRevision, summary, body
       FROM analysis WHERE student_id = :studentId AND fundamental_id = :fundamentalId AND club_group = :clubGroup
         AND as_of = :asOf AND policy_version = :policyVersion`,
    )
    .get({ ...of, studentId });
}

describe("a kept analysis", () => {
  test("comes back letter by letter, is replaced under its key, and changes no measurement", async () => {
    const db = await openAcademy();
    const measured = ["student", "session", "swing", "reading", "correction"];
    const before = await digestTables(db, measured);
    insertAnalysis(db, studentScope(), made);
    expect(readKept(db, "s1", key)).toEqual(made);
    insertAnalysis(db, studentScope(), { ...made, body: "again", dataRevision: 4 });
    expect(readKept(db, "s1", key)).toMatchObject({ body: "again", dataRevision: 4 });
    expect(countRows(db, "analysis")).toBe(1);
    for (const other of [
      { asOf: "2031-02-02" },
      { policyVersion: "p2" },
      { clubGroup: "driver" },
      { fundamentalId: "x" },
    ]) {
      expect(readKept(db, "s1", { ...key, ...other })).toBeUndefined();
    }
    expect(readKept(db, "s2", key)).toBeUndefined();
    expect(await digestTables(db, measured)).toEqual(before);
  });

  test("stands in lists only while the data are those that it rests on, and is dropped when the data or the policy have moved on", async () => {
    const db = await openAcademy();
    insertAnalysis(db, studentScope(), made);
    insertAnalysis(db, studentScope("s2"), made);
    insertAnalysis(db, studentScope("s2"), { ...made, policyVersion: "p0" });
    insertAnalysis(db, studentScope("t1", "a2"), { ...made, dataRevision: 9 });
    insertHeight(db, studentScope(), { day: "2031-02-01", cm: 150 });
    const current = () => readCurrentSummaries(db, scope, "p1");
    const fresh = { studentId: "s2", fundamentalId: "hinge", clubGroup: "iron", noiseModel: "m1", dataRevision: 0 };
    expect(current()).toEqual([{ ...fresh, summary: made.summary }]);
    expect(deleteStaleAnalyses(db, scope, "p1")).toBe(2);
    expect(current()).toEqual([{ ...fresh, summary: made.summary }]);
    expect(countRows(db, "analysis")).toBe(2);
    expect(revisionOf(db)).toBe(1);
  });
});

describe("what else is kept for pages", () => {
  test("the roster's list is replaced under its day and policy", async () => {
    const db = await openAcademy();
    const list = { asOf: "2031-02-01", policyVersion: "p1", inputDigest: "d1", body: "first" };
    insertRosterList(db, scope, list);
    insertRosterList(db, scope, { ...list, inputDigest: "d2", body: "second" });
    expect(readRosterList(db, scope, "2031-02-01", "p1")).toEqual({ ...list, inputDigest: "d2", body: "second" });
    expect(readRosterList(db, academyScope("a2"), "2031-02-01", "p1")).toBeUndefined();
  });

  test("the last press of seen is the last one made, even when the clock went back", async () => {
    const db = await openAcademy();
    const press = (seenAt: string, viewer = "owner") =>
      insertSeen(db, scope, { viewer, seenAt, asOf: "2031-02-01", body: seenAt });
    press("2031-03-02");
    press("2031-03-01");
    press("2031-03-09", "other");
    expect(readLastSeen(db, scope, "owner")?.body).toBe("2031-03-01");
    expect(readLastSeen(db, scope, "nobody")).toBeUndefined();
    expect(countRows(db, "seen")).toBe(3);
  });

  test("a draft is replaced under its id and dropped; another academy neither sees, overwrites nor drops it", async () => {
    const db = await openAcademy();
    const draft = { id: "f1", kind: "import", body: "a,b", updatedAt: NOW };
    insertDraft(db, scope, draft);
    insertDraft(db, scope, { ...draft, body: "a,b,c" });
    expect(readDraft(db, academyScope("a2"), "f1")).toBeUndefined();
    expect(() => insertDraft(db, academyScope("a2"), { ...draft, body: "x" })).toThrow("no such draft");
    deleteDraft(db, academyScope("a2"), "f1");
    expect(readDraft(db, scope, "f1")).toEqual({ ...draft, body: "a,b,c", studentId: null, userId: null, version: 2 });
    deleteDraft(db, scope, "f1");
    deleteDraft(db, scope, "f1");
    expect(readDraft(db, scope, "f1")).toBeUndefined();
  });
});
