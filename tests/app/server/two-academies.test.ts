import { existsSync, mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { closeDatabases, databaseFile, openAcademyDatabase } from "@/app/_server/database";
import { admitMachine, admitToStudent } from "@/app/_server/gate";
import { startOwnAcademy } from "@/app/_server/settings/own-academy";
import { insertAcademy } from "@/db/write/academies";

const wanted = { name: "Hilltop", ownerName: "Kim", zone: "Europe/Berlin", locale: "en" };
const nothing = { choice: null, locale: null };
let folder = "";

async function fillDemo(): Promise<void> {
  const db = await openAcademyDatabase("demo");
  insertAcademy(db, {
    id: "demo",
    name: "Demo",
    ownerName: "Robin",
    zone: "Europe/Berlin",
    locale: "en",
    kind: "demo",
    fixedToday: "2026-09-30",
    seasonStart: "2026-01-01",
    createdAt: "2026-01-01T00:00:00Z",
  });
  db.sqlite.exec(
    "INSERT INTO student (id, academy_id, alias, hand, zone, clubs, created_at) VALUES ('s1', 'demo', 'Dot', 'right', 'UTC', '', '')",
  );
}

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "proofband-"));
  process.env.PROOFBAND_DATA = folder;
});

afterEach(() => {
  closeDatabases();
  rmSync(folder, { recursive: true, force: true });
});

describe("the demo and the own academy", () => {
  it("has nobody to admit while there is no academy, and makes no file by looking", async () => {
    expect(await admitMachine(nothing)).toBeNull();
    expect(existsSync(databaseFile("demo"))).toBe(false);
    expect(existsSync(databaseFile("own"))).toBe(false);
  });

  it("shows the demo first, then the own one as soon as it was started, and the demo again on a wish", async () => {
    await fillDemo();
    expect((await admitMachine(nothing))?.choice).toBe("demo");
    expect((await admitMachine({ choice: "own", locale: null }))?.choice).toBe("demo");
    expect(await startOwnAcademy(wanted)).toBe("started");
    expect((await admitMachine(nothing))?.choice).toBe("own");
    expect((await admitMachine({ choice: "demo", locale: null }))?.choice).toBe("demo");
  });

  it("gives the demo its fixed day, the own one a real one, and each its owner's name", async () => {
    await fillDemo();
    await startOwnAcademy(wanted);
    const demo = await admitMachine({ choice: "demo", locale: null });
    const own = await admitMachine({ choice: "own", locale: null });
    expect([demo?.today, demo?.name, demo?.academy.kind]).toEqual(["2026-09-30", "Robin", "demo"]);
    expect([own?.name, own?.academy.kind, own?.academy.fixedToday]).toEqual(["Kim", "own", null]);
    expect(own?.today).toMatch(/^\d{4}-\d{2}-\d{2}$/);
  });

  it("starts one own academy, however often it is pressed", async () => {
    const answers = await Promise.all([1, 2, 3, 4].map(() => startOwnAcademy(wanted)));
    expect(answers.sort()).toEqual(["started", "there", "there", "there"]);
  });

  it("proves a student only to the academy that has them: absent and foreign look alike", async () => {
    await fillDemo();
    await startOwnAcademy(wanted);
    const demo = await admitMachine({ choice: "demo", locale: null });
    const own = await admitMachine({ choice: "own", locale: null });
    if (!demo || !own) throw new Error("both academies are there");
    expect(admitToStudent(demo, "s1")).toEqual({ academyId: "demo", studentId: "s1" });
    expect(admitToStudent(own, "s1")).toBeNull();
    expect(admitToStudent(demo, "nobody")).toBeNull();
    expect(admitToStudent(demo, "' OR 1=1 --")).toBeNull();
  });

  it("keeps folders at 0700 and files at 0600", async () => {
    await startOwnAcademy(wanted);
    const file = databaseFile("own");
    const modes = [folder, path.dirname(file), file, `${file}-wal`].map((each) => statSync(each).mode & 0o777);
    expect(modes).toEqual([0o700, 0o700, 0o600, 0o600]);
  });

  it("reads the wished language, else the academy's", async () => {
    await fillDemo();
    expect((await admitMachine({ choice: null, locale: "en-XA" }))?.words.locale).toBe("en-XA");
    expect((await admitMachine({ choice: null, locale: "../x" }))?.words.locale).toBe("en");
  });
});
