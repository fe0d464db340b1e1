import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabases, openAcademyDatabase } from "@/app/_server/database";
import { namesNothing } from "@/app/_server/door/presence";
import { admitMachine, type Viewer } from "@/app/_server/gate";
import { startOwnAcademy } from "@/app/_server/settings/own-academy";

let viewer: Viewer;
let folder = "";

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "proofband-"));
  process.env.PROOFBAND_DATA = folder;
  await startOwnAcademy({ name: "Hilltop", ownerName: "Kim", zone: "UTC", locale: "en" });
  const { sqlite } = await openAcademyDatabase("own");
  const academy = sqlite.prepare<[], string>("SELECT id FROM academy").pluck().get();
  sqlite
    .prepare(
      "INSERT INTO student (id, academy_id, alias, hand, zone, clubs, created_at) VALUES ('s1', ?, 'Dot', 'right', 'UTC', '', '')",
    )
    .run(academy);
  const found = await admitMachine({ choice: "own", locale: null });
  if (!found) throw new Error("no academy");
  viewer = found;
});

afterAll(() => {
  closeDatabases();
  rmSync(folder, { recursive: true, force: true });
});

describe("what an address names", () => {
  it("is there: a student, what stands beside students and fundamentals, and every other address", async () => {
    for (const address of ["/", "/students", "/students/new", "/students/s1", "/students/%731", "/record", "/import"]) {
      expect([address, namesNothing(address, viewer)]).toEqual([address, false]);
    }
    for (const address of [
      "/students/s1/sessions/new",
      "/students/s1/sessions/sheet",
      "/api/students/s1/csv",
      "/import/gone/done",
      "/rereads/new",
      "/rereads/of/hinge",
    ]) {
      expect([address, namesNothing(address, viewer)]).toEqual([address, false]);
    }
  });

  it("is there: every page that has a folder of its own beside the fundamentals", async () => {
    const beside = readdirSync(path.join(import.meta.dirname, "../../../app/(coach)/students/[studentId]"), {
      withFileTypes: true,
    }).filter((entry) => entry.isDirectory() && !entry.name.startsWith("["));
    expect(beside.length).toBeGreaterThan(1);
    for (const { name } of beside)
      expect([name, namesNothing(`/students/s1/${name}/new`, viewer)]).toEqual([name, false]);
  });

  it("isn't there: a student of nobody, a track never measured, an upload never made, an address in no encoding", async () => {
    const absent = ["/students/s2", "/students/s2/sessions/new", "/students/s1/hinge", "/students/s1/tilt-kept"];
    for (const address of [...absent, "/api/students/s2/csv", "/import/gone", "/rereads/gone", "/students/%E0%A4%A"]) {
      expect([address, namesNothing(address, viewer)]).toEqual([address, true]);
    }
  });
});
