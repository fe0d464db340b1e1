import { randomUUID } from "node:crypto";
import { expect, it } from "vitest";
import { diskFailureOf } from "@/app/_server/door/disk-failure";
import { bodyOf } from "@/app/_server/draft/form-draft";
import { keepDraft } from "@/app/_server/draft/keep-draft";
import { readDraft } from "@/db/read/drafts";
import { viewerOfAri } from "../../trust/own-academy";
import { startAcademy } from "./own-academy-data";

it("a full disk takes nothing of a form, leaves what was kept, and heals when there is room", async () => {
  const { remove } = await startAcademy();
  const viewer = await viewerOfAri();
  const draft = randomUUID();
  const keep = (turn: number, note: string) => {
    const { studentId } = viewer.student;
    const entries = [["note", note]] as const;
    return keepDraft(viewer, {
      draft,
      form: "session-form",
      studentId,
      version: 0,
      writer: "a",
      turn,
      entries,
      settles: "",
    });
  };
  keep(1, "before");
  const { sqlite } = viewer.db;
  sqlite.pragma(`max_page_count = ${sqlite.pragma("page_count", { simple: true })}`);
  let failure: unknown;
  try {
    keep(2, "x".repeat(400_000));
  } catch (error) {
    failure = error;
  }
  expect(diskFailureOf(failure)).toBe("full");
  const row = readDraft(viewer.db, viewer.scope, draft);
  expect(row && bodyOf(row).entries).toEqual([["note", "before"]]);
  sqlite.pragma("max_page_count = 1000000");
  expect(keep(3, "after").kind).toBe("kept");
  expect(diskFailureOf(Object.assign(new Error(), { code: "SQLITE_BUSY" }))).toBe("busy");
  for (const code of ["SQLITE_READONLY", "SQLITE_READONLY_DBMOVED", "EROFS"])
    expect(diskFailureOf(Object.assign(new Error(), { code }))).toBe("read-only");
  expect(diskFailureOf(new TypeError("x"))).toBeNull();
  expect(diskFailureOf(null)).toBeNull();
  remove();
});
