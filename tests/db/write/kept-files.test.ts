import { expect, test } from "vitest";
import { readDraft } from "@/db/read/drafts";
import { readKept } from "@/db/read/kept-files";
import { insertDraft } from "@/db/write/drafts";
import { deleteKeptFiles, updateDraftToKept, updateKeptToDraft } from "@/db/write/kept-files";
import { academyScope, NOW, openAcademy } from "../academy-fixture";

const scope = academyScope();

test("an upload is kept under its import's id with all that belongs to it, given back, and dropped when it is old", async () => {
  const db = await openAcademy();
  for (const [id, kind] of [
    ["f1", "import"],
    ["f1.file", "import-file"],
    ["f10", "import"],
  ] as const)
    insertDraft(db, scope, { id, kind, body: id, updatedAt: NOW });
  updateDraftToKept(db, academyScope("a2"), { draftId: "f1", batchId: "b1", now: NOW });
  expect(readDraft(db, scope, "f1")?.kind).toBe("import");
  updateDraftToKept(db, scope, { draftId: "f1", batchId: "b1", now: NOW });
  expect([readDraft(db, scope, "f1"), readKept(db, scope, "b1"), readKept(db, scope, "f10")]).toEqual([
    undefined,
    "kept",
    "gone",
  ]);
  expect(readDraft(db, scope, "b1.file")).toMatchObject({ kind: "kept import-file", body: "f1.file" });
  expect(updateKeptToDraft(db, scope, "b1", NOW)).toBe("given");
  expect([readDraft(db, scope, "b1")?.kind, readDraft(db, scope, "b1.file")?.kind]).toEqual(["import", "import-file"]);
  expect(updateKeptToDraft(db, scope, "b1", NOW)).toBe("gone");
  updateDraftToKept(db, scope, { draftId: "b1", batchId: "b2", now: NOW });
  expect(deleteKeptFiles(db, scope, NOW)).toBe(0);
  expect(deleteKeptFiles(db, scope, "2031-03-01T10:00:00.001Z")).toBe(2);
  expect([readKept(db, scope, "b2"), readDraft(db, scope, "f10")?.kind]).toEqual(["gone", "import"]);
});
