import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { copyFileSync, readdirSync, rmSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { checkBackup, digestTables } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { readTableNames } from "@/db/digest";
import { migrateDb } from "@/db/migrate";
import { builtScript } from "../built-script";
import { countRows } from "./academy-fixture";
import { openFilledAcademy } from "./filled-academy";
import { emptyFolder, plantMigration, rebuildStatements } from "./planted-migrations";

const SEED = 20310301;
const TRIES = 8;
const JOURNAL = "__drizzle_migrations";
/** The project's migrations and the planted one. */
const ALL = 1 + readdirSync(path.resolve("db", "migrations")).filter((name) => name.endsWith(".sql")).length;

function seededUniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

function saying(child: ChildProcess, word: string): Promise<void> {
  return new Promise((resolve, reject) => {
    child.stdout?.on("data", (chunk) => {
      if (String(chunk).includes(word)) resolve();
    });
    child.once("exit", () => reject(new Error(`ended without saying ${word}`)));
  });
}

async function copyToAppear(file: string): Promise<void> {
  const begins = `${path.basename(file)}.before-`;
  const isThere = () => readdirSync(path.dirname(file)).some((name) => name.startsWith(begins) && !/part/.test(name));
  while (!isThere()) await new Promise((resolve) => setTimeout(resolve, 1));
}

function startMigrating(file: string, folder: string): ChildProcess {
  const script = builtScript("tests/db/migrate-process.ts");
  return spawn(process.execPath, [script, file, folder], { stdio: ["ignore", "pipe", "inherit"] });
}

test(`a migration killed at ${TRIES} random moments leaves a sound database, all of it before or after`, async () => {
  const folder = emptyFolder();
  const filled = path.join(folder, "filled.db");
  const db = await openFilledAcademy(filled, 300, 10);
  const tables = readTableNames(db.sqlite).filter((table) => table !== JOURNAL);
  const before = await digestTables(db, tables);
  const migrations = plantMigration(["session", "swing", "reading"].flatMap((table) => rebuildStatements(db, table)));
  db.close();

  const whole = path.join(folder, "whole.db");
  copyFileSync(filled, whole);
  const unhurt = startMigrating(whole, migrations);
  await saying(unhurt, "begun");
  const started = performance.now();
  const done = saying(unhurt, "done").then(() => performance.now());
  await copyToAppear(whole);
  const copied = performance.now();
  const ended = await done;
  await once(unhurt, "exit");

  const uniform = seededUniform(SEED);
  const outcomes: string[] = [];
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const file = path.join(folder, `try-${attempt}.db`);
    copyFileSync(filled, file);
    const child = startMigrating(file, migrations);
    await saying(child, "begun");
    // Half of the kills fall anywhere, half after the copy, when the tables themselves are rebuilt.
    const anywhere = attempt < TRIES / 2;
    if (!anywhere) await copyToAppear(file);
    const share = ((attempt % (TRIES / 2)) + uniform()) / (TRIES / 2);
    const delay = share * 1.6 * (ended - (anywhere ? started : copied));
    await new Promise((resolve) => setTimeout(resolve, delay));
    const exited = child.exitCode === null ? once(child, "exit") : Promise.resolve();
    child.kill("SIGKILL");
    await exited;

    const reopened = openDatabase(file);
    expect(reopened.sqlite.pragma("integrity_check", { simple: true })).toBe("ok");
    expect(reopened.sqlite.pragma("foreign_key_check")).toEqual([]);
    expect(await digestTables(reopened, tables)).toEqual(before);
    const applied = countRows(reopened, JOURNAL);
    outcomes.push(`${anywhere ? "" : "copy + "}${Math.round(delay)} ms: ${applied === ALL ? "after" : "before"}`);
    const { copy } = await migrateDb(reopened, migrations);
    expect(copy === null).toBe(applied === ALL);
    expect(countRows(reopened, JOURNAL)).toBe(ALL);
    expect(await digestTables(reopened, tables)).toEqual(before);
    reopened.close();
    if (copy !== null) expect((await checkBackup(copy)).kind).toBe("sound");
  }
  process.stdout.write(
    `seed ${SEED}, ${TRIES} kills within ${Math.round(ended - started)} ms: ${outcomes.join(", ")}\n`,
  );
  rmSync(folder, { recursive: true });
});
