import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { loadPastImport } from "@/app/_server/import/past-import";
import { undoBatch } from "@/app/_server/import/undo-desk";
import { confirmImport, writeImport } from "@/app/_server/import/write-import";
import { findJob } from "@/app/_server/import/write-jobs";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { readConsents } from "@/db/read/students";
import { updateConsentWithdrawn } from "@/db/write/students";
import { insertRow } from "../../db/told-fixture";
import { type HandingAcademy, startHandingAcademy } from "../../trust/handing-academy";
import { form } from "./inviting";

let academy: HandingAcademy;
beforeAll(async () => {
  academy = await startHandingAcademy();
});
afterAll(() => academy.remove());

const draftOf = (day: string) => ({
  fileName: "season.csv",
  file: Buffer.from(`student,date,club,swing,hinge\nNia,${day},7-iron,1,88\n`).toString("base64"),
  answers: [
    [`answer:consent:${academy.nia}`, "on-paper"],
    [`answer-givenBy:consent:${academy.nia}`, "her mother"],
  ] as const,
});
const give = (coach: string) => giveStudents(academy.ada, form({ students: [academy.nia], coach }));
const count = (table: string) => academy.db.sqlite.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get();

/** Imports while something happens between the reading of the file and the writing. */
function importWhile(viewer: Viewer, day: string, happens: () => void) {
  const hand = { door: "page", batchId: randomUUID(), who: viewer.name, draftId: null } as const;
  return writeImport(viewer, draftOf(day), {
    ...hand,
    async onReady() {
      happens();
    },
  });
}

describe("what happens between the reading of a file and its writing", () => {
  it("a consent that is withdrawn, or a student who is handed over, leaves nothing written; nothing of that, all of it", async () => {
    const bo = academy.as("bo");
    expect((await confirmImport(bo, draftOf("2026-03-01"))).kind).toBe("imported");
    const before = ["session", "import_batch", "consent"].map(count);
    expect(await importWhile(bo, "2026-03-02", () => give("cy"))).toEqual({ kind: "nothing-ready" });
    give("bo");
    const withdrawn = () => {
      for (const { id } of readConsents(academy.db, bo.student))
        updateConsentWithdrawn(academy.db, bo.student, { consentId: id, withdrawnOn: bo.today });
    };
    expect(await importWhile(academy.as("bo"), "2026-03-02", withdrawn)).toEqual({ kind: "nothing-ready" });
    expect(["session", "import_batch", "consent"].map(count)).toEqual(before);
    academy.db.sqlite.prepare("UPDATE consent SET withdrawn_on = NULL").run();
    expect((await importWhile(academy.as("bo"), "2026-03-02", () => {})).kind).toBe("imported");
  });
});

describe("the undo of an import of which a student is another coach's by now", () => {
  const older = () =>
    academy.db.sqlite.prepare<[], string>("SELECT batch_id FROM session WHERE day = '2026-03-02'").pluck().get() ?? "";

  it("isn't offered, is refused in words, and leaves all of it to a director", async () => {
    const batchId = older();
    expect(loadPastImport(academy.as("bo"), batchId, undefined)?.undo.form).not.toBeNull();
    give("cy");
    const bo = academy.viewer("bo");
    const page = loadPastImport(bo, batchId, undefined);
    expect(page?.undo).toMatchObject({ form: null, paragraphs: [expect.stringContaining("ask a director")] });
    const before = count("reading");
    expect(await undoBatch(bo, batchId, "sure")).toBe("started");
    expect(findJob(bo, batchId)).toMatchObject({ state: "done", outcome: "out-of-charge", failure: "" });
    expect(count("reading")).toBe(before);
    expect(loadPastImport(academy.viewer(academy.ownerId), batchId, undefined)?.undo.form).not.toBeNull();
  });

  it("says of what was built on it since neither what nor how much", () => {
    const batchId = older();
    const reading = academy.db.sqlite
      .prepare<[string], number>("SELECT id FROM reading WHERE batch_id = ?")
      .pluck()
      .get(batchId);
    const mended = { typed: "87", who: "Cy", why: "seen anew", corrected_at: "2026-04-01T10:00:00.000Z" };
    insertRow(academy.db, "correction", { reading_id: reading ?? 0, ...mended });
    const words = ({ undo }: NonNullable<ReturnType<typeof loadPastImport>>) => undo.built.map(({ text }) => text);
    const page = loadPastImport(academy.viewer("bo"), batchId, undefined);
    expect(page && words(page)).toEqual(["Something of students who aren’t in your charge: ask a director"]);
    const cy = loadPastImport(academy.viewer(academy.ownerId), batchId, undefined);
    expect(cy && words(cy)[0]).toContain("one correction");
  });
});
