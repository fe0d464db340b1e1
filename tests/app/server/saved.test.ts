import { readFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { admitToStudent, type StudentViewer } from "@/app/_server/gate";
import { confirmImport } from "@/app/_server/import/write-import";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { loadSaved } from "@/app/_server/session/load-saved";
import { addSession } from "@/app/_server/session/session-desk";
import { digestTables } from "@/db/backup";
import { readStudents } from "@/db/read/students";
import { saidKey } from "@/lib/report/said";
import { startAcademy } from "./own-academy-data";

const ROOT = path.join(import.meta.dirname, "../../..");
const MEASURED = ["reading", "correction", "session", "swing", "capture", "student", "look_noise", "draft"];
let coach: StudentViewer;
let remove: () => void;
let before: ReadonlyMap<string, string>;
let sessionId: string;

function formOf(fields: Readonly<Record<string, string>>): FormData {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.append(name, value);
  return data;
}

async function saidNow(): Promise<ReadonlyMap<string, string>> {
  const { tracks } = await loadStudentVerdicts(coach);
  return new Map(tracks.map(({ verdict }) => [verdict.id, `${saidKey(verdict)} ${verdict.position}`]));
}

beforeAll(async () => {
  const started = await startAcademy();
  remove = started.remove;
  const { viewer } = started;
  await confirmImport(viewer, {
    fileName: "season-long.csv",
    file: readFileSync(path.join(ROOT, "seed/samples/season-long.csv")).toString("base64"),
    answers: [
      ["answer:student:nia", "new-right"],
      ["answer-givenBy:student:nia", "herself"],
    ],
  });
  const student = admitToStudent(viewer, readStudents(viewer.db, viewer.scope)[0]?.id ?? "");
  if (!student) throw new Error("Nia was not imported");
  coach = { ...viewer, student };
  before = await saidNow();
  const fields = { day: "2026-09-01", clubGroup: "iron", circumstance: "unaided" };
  const cells = { "r.1.hinge": "66", "r.2.hinge": "120", "r.1.setup-tilt": "9" };
  const added = await addSession(coach, formOf({ ...fields, ...cells }));
  if (added.kind !== "added") throw new Error("the session was refused");
  sessionId = added.sessionId;
});
afterAll(() => remove());

describe("the page after saving", () => {
  it("says of each fundamental of the session what changed against what was said before it, and of no other", async () => {
    const page = await loadSaved(coach, sessionId);
    const after = await saidNow();
    const changed = [...after].filter(([id, said]) => before.get(id) !== said).map(([id]) => id.split("/")[1]);
    const hrefs = page.changed.lines.map((line) => line.href.split("/").at(-1)?.split("?")[0]);
    for (const id of changed) expect(hrefs).toContain(id);
    expect(hrefs).toContain("setup-tilt");
    expect(page.changed.lines.find((line) => line.href.includes("setup-tilt"))?.text).toMatch(
      /^The first film of it here/,
    );
    expect(`${page.changed.unchanged} ${hrefs.join(" ")}`).not.toContain("hip-sway");
    expect(page.lede).toContain("3 readings of 2 swings");
  });

  it("asks about the value that lies outside anything read before, with that range, and says what a change would be", async () => {
    const { check } = await loadSaved(coach, sessionId);
    expect(check?.items).toEqual([
      expect.stringMatching(/^Swing 2, Wrist hinge: 120\.0°\. Before: \d+\.\d to \d+\.\d°\.$/),
    ]);
    expect(check?.explains).toContain("a correction made with sight of the past");
    expect(check?.link.href).toBe(`/students/${coach.student.studentId}/sessions/${sessionId}`);
  });

  it("writes nothing by being looked at", async () => {
    const digest = await digestTables(coach.db, MEASURED);
    await loadSaved(coach, sessionId);
    expect(await digestTables(coach.db, MEASURED)).toEqual(digest);
  });

  it("isn't there for a session that isn't", async () => {
    await expect(loadSaved(coach, "nothing")).rejects.toThrow(/404|NOT_FOUND/i);
  });
});
