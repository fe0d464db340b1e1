import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabases } from "@/app/_server/database";
import { openDatabase } from "@/db/client";
import { builtScript } from "../../built-script";
import { startAcademy } from "../server/own-academy-data";

const ROOT = path.join(import.meta.dirname, "../../..");
const SAMPLE = path.join(ROOT, "seed/samples/season-long.csv");
const out = mkdtempSync(path.join(tmpdir(), "proofband-out-"));
const folders: string[] = [out];

/** A data folder of its own with an empty academy in it, closed, as commands find it. */
async function newAcademy(): Promise<string> {
  const { folder } = await startAcademy();
  closeDatabases();
  folders.push(folder);
  return folder;
}

function run(data: string, command: string, ...args: readonly string[]) {
  const done = spawnSync(process.execPath, [builtScript(`app/_commands/${command}.ts`), ...args], {
    cwd: ROOT,
    encoding: "utf8",
    env: { ...process.env, PROOFBAND_DATA: data },
  });
  return { status: done.status, said: done.stdout + done.stderr };
}

let data: string;
beforeAll(async () => {
  data = await newAcademy();
  const answers = ["--answer", "answer:student:nia=new-right", "--answer", "answer-givenBy:student:nia=mother"];
  const made = run(data, "import", SAMPLE, ...answers, "--confirm");
  if (made.status !== 0) throw new Error(made.said);
}, 120_000);
afterAll(() => {
  closeDatabases();
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

describe("npm run export", () => {
  it("writes an archive that its owner alone may read, and never over a file", () => {
    const file = path.join(out, "all.zip");
    const made = run(data, "export", "--out", file, "--academy", "own");
    expect(made.said).toContain("1 student, 9 sessions, 90 readings");
    expect([made.status, statSync(file).mode & 0o777]).toEqual([0, 0o600]);
    const before = readFileSync(file);
    expect(run(data, "export", "--out", file)).toMatchObject({ status: 2 });
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it("one student by the alias; a name that nobody has, a missing word and an unknown one write nothing", () => {
    const file = path.join(out, "nia.zip");
    expect(run(data, "export", "--out", file, "--student", "Nia").status).toBe(0);
    expect(strFromU8(unzipSync(readFileSync(file))["archive.json"] ?? new Uint8Array())).toContain(
      '"holds": "student"',
    );
    const none = path.join(out, "none.zip");
    for (const args of [["--student", "Nobody"], ["--wrong", "x"], ["--academy", "demo"], ["--academy"]])
      expect(run(data, "export", "--out", none, ...args).status).toBe(2);
    expect(existsSync(none)).toBe(false);
  });

  it("P5: what a command takes out is a look of a program at each student in it; another program that writes is waited for", () => {
    const looks = () => {
      const db = openDatabase(path.join(data, "academy", "proofband.db"), "read");
      const found = db.sqlite
        .prepare<[], string>("SELECT role || ' ' || what || ' ' || place FROM record_view")
        .pluck()
        .all();
      db.close();
      return found;
    };
    const before = looks().length;
    expect(run(data, "tracks", "--academy", "own").status).toBe(0);
    // The lock of a server that saves something, given up while the command waits.
    const file = path.join(data, "academy", "proofband.db");
    const script = `const db = new (require("better-sqlite3"))(process.argv[1]); db.exec("BEGIN IMMEDIATE");
      process.stdout.write("held"); setTimeout(() => { db.exec("ROLLBACK"); db.close(); }, 3000)`;
    const holder = spawn(process.execPath, ["-e", script, file], { cwd: ROOT, stdio: ["ignore", "pipe", "inherit"] });
    return new Promise<void>((resolve, reject) => {
      holder.once("error", reject);
      holder.stdout.once("data", () => {
        const made = run(data, "export", "--out", path.join(out, "beside.zip"), "--student", "Nia");
        expect([made.status, made.said]).toEqual([0, expect.not.stringContaining("could not be written")]);
        resolve();
      });
    }).then(() =>
      expect(looks().slice(before)).toEqual(["program file npm run tracks", "program file npm run export"]),
    );
  }, 60_000);

  it("npm run import shows the archive first, takes it into an empty academy when told to, and it comes out the same", async () => {
    const [file, again] = [path.join(out, "all.zip"), path.join(out, "again.zip")];
    const empty = await newAcademy();
    const shown = run(empty, "import", file);
    expect(shown.said).toContain("Nia: 9 sessions, 45 swings, 90 readings");
    expect([shown.status, run(empty, "import", file).said]).toEqual([0, shown.said]);
    expect(run(empty, "import", file, "--confirm")).toMatchObject({ status: 0 });
    expect(run(empty, "export", "--out", again).status).toBe(0);
    const json = (name: string) => strFromU8(unzipSync(readFileSync(name))["archive.json"] ?? new Uint8Array());
    expect(json(again)).toBe(json(file));
    expect(run(empty, "import", file, "--confirm").said).not.toContain("90 readings were added");
  }, 120_000);
});
