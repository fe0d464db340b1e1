import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Database } from "@/db/client";
import { readDraft, readDraftsOf } from "@/db/read/drafts";
import { readReceipt } from "@/db/read/receipts";
import { deleteDraft, insertDraft, updateDraftBody } from "@/db/write/drafts";
import { insertReceipt } from "@/db/write/receipts";
import { academyScope, NOW, openAcademy } from "../academy-fixture";

let db: Database;
const mine = academyScope();
const other = academyScope("a2");
const kept = { id: "d1", kind: "session-form s1", studentId: "s1", body: "{}", updatedAt: NOW };

beforeEach(async () => {
  db = await openAcademy();
});
afterEach(() => db.close());

describe("drafts", () => {
  it("count their versions, 1, 2, 3, and are another academy's neither to read nor to write", () => {
    for (const body of ["{}", "[]", "null"]) insertDraft(db, mine, { ...kept, body });
    expect(readDraft(db, mine, "d1")).toMatchObject({ version: 3, body: "null", studentId: "s1" });
    expect(readDraft(db, other, "d1")).toBeUndefined();
    expect(() => insertDraft(db, other, kept)).toThrow("no such draft: d1");
    deleteDraft(db, other, "d1");
    expect(readDraft(db, mine, "d1")?.version).toBe(3);
  });

  it("are listed by the beginning of their kind, the latest first, those of one hour by their ids", () => {
    const at = (hour: number) => `2031-03-01T1${hour}:00:00.000Z`;
    insertDraft(db, mine, { ...kept, id: "d1", updatedAt: at(1) });
    insertDraft(db, mine, { ...kept, id: "d2", updatedAt: at(2) });
    insertDraft(db, mine, { ...kept, id: "d3", updatedAt: at(2) });
    insertDraft(db, mine, { ...kept, id: "d4", kind: "dropped session-form s1", updatedAt: at(3) });
    expect(readDraftsOf(db, mine, "session-form").map(({ id }) => id)).toEqual(["d3", "d2", "d1"]);
    expect(readDraftsOf(db, other, "session-form")).toEqual([]);
  });

  it("written anew where only what waits beside has changed, they keep their version", () => {
    insertDraft(db, mine, kept);
    updateDraftBody(db, mine, "d1", "[]");
    expect(readDraft(db, mine, "d1")).toMatchObject({ version: 1, body: "[]" });
    expect(() => updateDraftBody(db, other, "d1", "{}")).toThrow("no such draft: d1");
  });

  it("go with their student", () => {
    insertDraft(db, mine, kept);
    db.sqlite.prepare("DELETE FROM student WHERE id = 's1'").run();
    expect(readDraft(db, mine, "d1")).toBeUndefined();
  });
});

describe("receipts", () => {
  it("are given once a key, and are each academy's own", () => {
    const receipt = { key: "k", kind: "student-form", outcome: "{}", savedAt: NOW };
    insertReceipt(db, mine, receipt);
    expect(readReceipt(db, mine, "k")).toEqual(receipt);
    expect(readReceipt(db, other, "k")).toBeUndefined();
    expect(() => insertReceipt(db, mine, receipt)).toThrow(/UNIQUE/);
  });
});
