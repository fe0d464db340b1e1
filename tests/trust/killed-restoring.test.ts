import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, it } from "vitest";
import { backupTo, digestTables, type TableDigests } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { type Child, seededUniform, startScript } from "./child";
import { KILLS, KILLS_TIMEOUT_MS, LONGEST_MS } from "./kill-count";
import { importSeason, openSeason } from "./killed-acts";

// D1: SIGKILL in a restore over data. Afterwards there are always data of the old or the new state, under their own name.

const SEED = 20261128;
const SCRIPT = path.join("app", "_commands", "restore.ts");

interface Place {
  readonly data: string;
  readonly academy: string;
  readonly file: string;
  /** A copy of other data than those that are there first. */
  readonly copies: Readonly<Record<"old" | "new", string>>;
  readonly digests: Readonly<Record<"old" | "new", TableDigests>>;
}

async function twoStates(folder: string): Promise<Place> {
  const data = path.join(folder, "data");
  const academy = path.join(data, "academy");
  const file = path.join(academy, "proofband.db");
  mkdirSync(academy, { recursive: true, mode: 0o700 });
  const copies = { old: path.join(folder, "old.db"), new: path.join(folder, "new.db") };
  const db = await openSeason(file);
  await backupTo(db, copies.old);
  const old = await digestTables(db);
  importSeason(db, "Nia");
  await backupTo(db, copies.new);
  const digests = { old, new: await digestTables(db) };
  db.close();
  return { data, academy, file, copies, digests };
}

/** Waits until the copy is being laid aside, so that the kills fall into that and what follows. */
async function untilLaidAside(file: string, child: Child): Promise<void> {
  // One that a killed restore left is older.
  const from = Date.now();
  const begun = () => (statSync(`${file}.restoring`, { throwIfNoEntry: false })?.mtimeMs ?? 0) >= from;
  while (!begun() && child.process.exitCode === null) await new Promise((resolve) => setTimeout(resolve, 1));
}

async function timeFromLaidAside(file: string, child: Child): Promise<number> {
  await untilLaidAside(file, child);
  const from = performance.now();
  expect(await child.ended).toBe(0);
  return performance.now() - from;
}

async function stateOf(file: string): Promise<TableDigests> {
  expect(existsSync(file)).toBe(true);
  const db = openDatabase(file);
  expect(db.sqlite.pragma("integrity_check", { simple: true })).toBe("ok");
  expect(db.sqlite.pragma("foreign_key_check")).toEqual([]);
  const digests = await digestTables(db);
  db.close();
  return digests;
}

it("restore: the data are those of before or of the copy, and the next restore needs no hand", {
  timeout: KILLS_TIMEOUT_MS,
}, async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "proofband-killed-"));
  try {
    const { data, academy, file, copies, digests } = await twoStates(folder);
    const uniform = seededUniform(SEED);
    const whole = startScript(SCRIPT, ["--replace", copies.new], { PROOFBAND_DATA: data });
    const wholeMs = await timeFromLaidAside(file, whole);
    const outcomes = { before: 0, after: 0 };
    let is: "old" | "new" = "new";
    // On a busy machine restores take another time than the first did: until both have been met, some more.
    const isOneSided = (): boolean => Math.min(outcomes.before, outcomes.after) === 0;
    for (let trial = 0; trial < KILLS || (isOneSided() && trial < 5 * KILLS); trial++) {
      const wanted: "old" | "new" = is === "old" ? "new" : "old";
      const child = startScript(SCRIPT, ["--replace", copies[wanted]], { PROOFBAND_DATA: data });
      await untilLaidAside(file, child);
      // Half of the kills fall in the first milliseconds, the others in all of a restore as long as it takes here.
      await new Promise((resolve) => setTimeout(resolve, uniform() * (trial % 2 === 0 ? LONGEST_MS : 1.5 * wholeMs)));
      child.process.kill("SIGKILL");
      const status = await child.ended;
      const found = await stateOf(file);
      const isAfter: boolean = JSON.stringify(found) === JSON.stringify(digests[wanted]);
      expect(found).toEqual(digests[isAfter ? wanted : is]);
      if (status === 0) expect(isAfter).toBe(true);
      outcomes[isAfter ? "after" : "before"] += 1;
      is = isAfter ? wanted : is;
      // What a restore keeps of the data before is whole too.
      for (const name of readdirSync(academy).filter((each) => each.includes(".replaced-"))) {
        const kept = path.join(folder, "kept.db");
        renameSync(path.join(academy, name), kept);
        expect([digests.old, digests.new]).toContainEqual(await stateOf(kept));
        rmSync(kept);
      }
    }
    console.log(
      `D1 restore: ${outcomes.before + outcomes.after} kills, seed ${SEED}, ${outcomes.before} before, ${outcomes.after} after`,
    );
    expect(isOneSided()).toBe(false);
    const last = startScript(SCRIPT, ["--replace", copies.new], { PROOFBAND_DATA: data });
    expect(await last.ended).toBe(0);
    expect(await stateOf(file)).toEqual(digests.new);
    expect(readdirSync(academy).filter((name) => name.includes(".restoring"))).toEqual([]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

it("a journal that a killed restore left is not taken for that of the copy restored next", {
  timeout: KILLS_TIMEOUT_MS,
}, async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "proofband-killed-"));
  try {
    const { data, file, copies, digests } = await twoStates(folder);
    // A journal that was not taken in, as of a process that died while it wrote.
    const dying = path.join(folder, "dying.db");
    copyFileSync(copies.old, dying);
    const db = openDatabase(dying);
    db.sqlite.pragma("wal_autocheckpoint = 0");
    importSeason(db, "Lina");
    copyFileSync(`${dying}-wal`, `${file}.restoring-wal`);
    db.close();
    const child = startScript(SCRIPT, ["--replace", copies.old], { PROOFBAND_DATA: data });
    expect([await child.ended, await stateOf(file)]).toEqual([0, digests.old]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
