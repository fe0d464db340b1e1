import { expect, it } from "vitest";
import { readUploadedArchive } from "@/app/_server/archive/archive-desk";
import { sayDifference } from "@/app/_server/archive/archive-page";
import { loadArchive } from "@/app/_server/archive/load-archive";
import { packArchive } from "@/app/_server/archive/pack-archive";
import { closeDatabases } from "@/app/_server/database";
import { eraseWhenMeant } from "@/app/_server/erase/erase-desk";
import { admitMachine } from "@/app/_server/gate";
import { confirmImport } from "@/app/_server/import/write-import";
import { addSession } from "@/app/_server/session/session-desk";
import { readStudents } from "@/db/read/students";
import { formOf, sessionFields, viewerOfAri } from "../../trust/own-academy";
import { startAcademy } from "./own-academy-data";

it("the archive of an erased student says that they were erased, comes back under another id, and stays over a start", async () => {
  const { remove } = await startAcademy();
  try {
    const ari = await viewerOfAri();
    await addSession(ari, formOf(sessionFields("2026-09-01")));
    const bytes = packArchive(ari, await loadArchive(ari, ari.student));
    await eraseWhenMeant(ari, formOf({ reason: "asked", alias: "Ari" }));
    const draft = { fileName: "ari.zip", answers: [], file: Buffer.from(bytes).toString("base64") };
    const { result } = await readUploadedArchive(ari, draft, "archive");
    if (result.kind !== "archive") throw new Error(result.kind);
    expect(result.differences.map((each) => sayDifference(ari.words, each)).join()).toMatch(/Ari was erased here on/);
    expect((await confirmImport(ari, draft)).kind).toBe("imported");
    closeDatabases();
    const again = await admitMachine({ choice: "own", locale: null });
    if (!again) throw new Error("no academy");
    const students = readStudents(again.db, again.scope);
    expect(students.map(({ alias }) => alias)).toEqual(["Ari"]);
    expect(students[0]?.id).not.toBe(ari.student.studentId);
    expect(again.db.sqlite.prepare("SELECT count(*) FROM reading").pluck().get()).toBe(4);
  } finally {
    remove();
  }
});
