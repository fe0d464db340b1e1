import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabases, databaseFile, findAcademyDatabase } from "@/app/_server/database";
import { eraseGroup } from "@/app/_server/erase/erase-group";
import { copyErasedList, erasedListOf } from "@/app/_server/erase/erased-list";
import { dropCopiesBeside } from "@/app/_server/erase/old-copies";
import { admitMachine, scopeForJudging, type Viewer } from "@/app/_server/gate";
import { watchClock } from "@/app/_server/keeping/watch-clock";
import { backupTo } from "@/db/backup";
import { readErasedGroup } from "@/db/read/erased-group";
import { wordsFor } from "@/lib/words/catalogue";
import { startAcademy } from "../app/server/own-academy-data";
import { countCases } from "./count-cases";
import { type Planted, plantOthers, plantStudent } from "./planted-student";
import { findBytes } from "./search-bytes";

// P3: a copy from before the erasure is restored; copies older than 35 days.

const cases = countCases("P3 a copy older than the erasure", 5);
const DAY_MS = 86_400_000;

let viewer: Viewer;
let folder: string;
let copies: string;
let remove: () => void;
let gone: Planted;
let stays: Planted;

function run(script: string, data: string, ...args: string[]): { status: number | null; said: string } {
  const command = ["--import", "tsx", path.join("app", "_commands", `${script}.ts`), ...args];
  const env = { ...process.env, PROOFBAND_DATA: data };
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { env, encoding: "utf8" });
  return { status, said: stdout + stderr };
}

/** Everybody on file in a data folder, as the first page would find them. */
async function studentsOf(data: string): Promise<string[]> {
  closeDatabases();
  process.env.PROOFBAND_DATA = data;
  const found = await findAcademyDatabase("own");
  const ids = found?.db.sqlite.prepare<[], string>("SELECT id FROM student ORDER BY id").pluck().all() ?? [];
  closeDatabases();
  return ids;
}

beforeAll(async () => {
  ({ viewer, folder, remove } = await startAcademy());
  copies = mkdtempSync(path.join(tmpdir(), "proofband-copies-"));
  const others = plantOthers(viewer.db, viewer.academy.id);
  gone = plantStudent(viewer.db, viewer.academy.id, "qfjvwkxzhq", others);
  stays = plantStudent(viewer.db, viewer.academy.id, "mzkqhwvvjx", others);
  await backupTo(viewer.db, path.join(copies, "before.db"));
  const group = readErasedGroup(viewer.db, scopeForJudging(viewer.db, viewer.scope, gone.studentId));
  eraseGroup(viewer.db, group, { who: "Director", reason: "asked", words: wordsFor("en") });
  await backupTo(viewer.db, path.join(copies, "after.db"));
  copyErasedList(viewer.db.file, path.join(copies, "after.db"));
  closeDatabases();
});
afterAll(() => {
  rmSync(copies, { recursive: true, force: true });
  remove();
});

it("restored over the data, which know who was erased", async () => {
  const came = run("restore", folder, "--replace", path.join(copies, "before.db"));
  expect(came).toMatchObject({ status: 0, said: expect.stringContaining("One student was erased after this copy") });
  for (const name of readdirSync(path.join(folder, "academy")).filter((each) => each.includes(".replaced-")))
    rmSync(path.join(folder, "academy", name));
  // As it lies on the disk, before anything opens it.
  expect(findBytes(folder, [gone.word, gone.alias, ...gone.ids])).toEqual([]);
  expect(await studentsOf(folder)).toContain(stays.studentId);
  cases.add();
});

it("restored on a new machine, from a folder in which a later copy knows who was erased", async () => {
  const data = path.join(copies, "new-machine");
  expect(run("restore", data, path.join(copies, "before.db"))).toMatchObject({ status: 0 });
  expect(findBytes(data, [gone.word, gone.alias, ...gone.ids])).toEqual([]);
  const ids = await studentsOf(data);
  expect(ids).toContain(stays.studentId);
  expect(ids).not.toContain(gone.studentId);
  cases.add();
});

it("put in place by hand, as a file: whoever opens it finds nobody who was erased", async () => {
  const data = path.join(copies, "by-hand");
  mkdirSync(path.join(data, "academy"), { recursive: true, mode: 0o700 });
  process.env.PROOFBAND_DATA = data;
  copyFileSync(path.join(copies, "before.db"), databaseFile("own"));
  copyFileSync(erasedListOf(path.join(copies, "after.db")), erasedListOf(databaseFile("own")));
  expect(await studentsOf(data)).not.toContain(gone.studentId);
  expect(findBytes(data, [gone.word, gone.alias, ...gone.ids])).toEqual([]);
  cases.add();
});

it("a copy made by the command has the list beside it, and copies of more than 35 days go, others and strangers stay", async () => {
  process.env.PROOFBAND_DATA = folder;
  const opened = await admitMachine({ choice: "own", locale: null });
  if (opened) watchClock(opened);
  closeDatabases();
  const days = (count: number) => new Date(Date.now() - count * DAY_MS);
  const made = path.join(copies, "made");
  mkdirSync(made);
  for (const name of ["old.db", "young.db"])
    expect(run("backup", folder, path.join(made, name))).toMatchObject({ status: 0 });
  utimesSync(path.join(made, "old.db"), days(36), days(36));
  utimesSync(path.join(made, "young.db"), days(34), days(34));
  // Copied on, with its digests, it has a new time of its own.
  for (const end of ["", ".digests.json"])
    copyFileSync(path.join(made, `young.db${end}`), path.join(made, `on.db${end}`));
  const digests = JSON.parse(readFileSync(path.join(made, "on.db.digests.json"), "utf8")) as Record<string, unknown>;
  expect(Math.abs(Date.parse(String(digests.madeAt)) - Date.now())).toBeLessThan(DAY_MS);
  writeFileSync(path.join(made, "on.db.digests.json"), JSON.stringify({ ...digests, madeAt: days(36).toISOString() }));
  writeFileSync(path.join(made, "strange.db"), "x");
  writeFileSync(path.join(made, "strange.db.digests.json"), "{}");
  utimesSync(path.join(made, "strange.db"), days(400), days(400));
  const came = run("backup", folder, path.join(made, "new.db"));
  expect(came.said).toContain("old.db");
  const left = readdirSync(made).sort();
  expect(left.filter((name) => name.startsWith("old") || name.startsWith("on."))).toEqual([]);
  for (const name of ["young.db", "new.db", "new.db.digests.json", "new.db.erased", "strange.db"])
    expect(left).toContain(name);
  cases.add();
});

it("copies beside the data, of a migration or a restore, go after 35 days", () => {
  const beside = path.join(copies, "beside");
  mkdirSync(beside);
  const file = path.join(beside, "proofband.db");
  for (const [name, age] of [
    ["proofband.db", 400],
    ["proofband.db.before-1", 36],
    ["proofband.db.before-1.digests.json", 36],
    ["proofband.db.replaced-2031", 36],
    ["proofband.db.before-2", 34],
  ] as const) {
    writeFileSync(path.join(beside, name), "x");
    const at = new Date(Date.now() - age * DAY_MS);
    utimesSync(path.join(beside, name), at, at);
  }
  expect(dropCopiesBeside(file)).toBe(2);
  expect(readdirSync(beside).sort()).toEqual(["proofband.db", "proofband.db.before-2"]);
  cases.add();
});
