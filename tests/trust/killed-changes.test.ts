import { existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { checkBackup, digestTables, type TableDigests } from "@/db/backup";
import { type Database, openDatabase } from "@/db/client";
import { seededUniform, startChild } from "./child";
import { KILLS, KILLS_TIMEOUT_MS, LONGEST_MS } from "./kill-count";
import { mergeBoth, openChange, openSeason, SEASON_READINGS, splitFirst, undoChange } from "./killed-acts";

// D1: SIGKILL after a random 0 to 400 ms in the undo of an import, in split and merge and their undo, and in a backup.

const SEED = 20261127;
/** All that a split, a merge or an undo touches; a student's count of changes alone grows with each. */
const TOUCHED = ["session", "swing", "reading", "capture", "stated_capture_sd", "consent", "height"];

type Acknowledged = readonly (readonly [what: string, name: string])[];

/** Kills the act so often on one file, and hands the data, opened as a next start opens them, to a check. */
async function killRepeatedly(
  act: "undo" | "records" | "backup",
  folder: string,
  check: (db: Database, acknowledged: Acknowledged) => Promise<void> | void,
): Promise<number> {
  const file = path.join(folder, "proofband.db");
  const uniform = seededUniform(SEED + act.length);
  let told = 0;
  for (let trial = 0; trial < KILLS; trial++) {
    const child = startChild("changing-process.ts", [act, file, `t${trial}`], {});
    // Every fifth kill waits for something acknowledged: on a busy machine the others may all come before.
    await child.saying(trial % 5 === 0 ? "acknowledged" : "begun");
    await new Promise((resolve) => setTimeout(resolve, uniform() * LONGEST_MS));
    child.process.kill("SIGKILL");
    await child.ended;
    const acknowledged = child.lines.flatMap((line): [string, string][] => {
      const said = /^acknowledged (\S+) (\S+)$/.exec(line);
      return said?.[1] && said[2] ? [[said[1], said[2]]] : [];
    });
    told += acknowledged.length;
    const db = openDatabase(file);
    expect(db.sqlite.pragma("integrity_check", { simple: true })).toBe("ok");
    expect(db.sqlite.pragma("foreign_key_check")).toEqual([]);
    await check(db, acknowledged);
    db.close();
  }
  return told;
}

async function inFolder(work: (folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(path.join(tmpdir(), "proofband-killed-"));
  try {
    await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function report(act: string, acknowledged: number): void {
  console.log(`D1 ${act}: ${KILLS} kills, seed ${SEED}, ${acknowledged} acknowledged`);
  // Work was done between the kills, or they would prove nothing.
  expect(acknowledged).toBeGreaterThanOrEqual(KILLS / 5);
}

function requireWholeBatches(db: Database, acknowledged: Acknowledged): void {
  const rows = "(SELECT count(*) FROM reading WHERE batch_id = batch.id)";
  const students = "(SELECT count(*) FROM student WHERE batch_id = batch.id)";
  const batches = db.sqlite
    .prepare<[], { id: string; undone: number; readings: number; students: number }>(
      `SELECT id, undone_at IS NOT NULL AS undone, ${rows} AS readings, ${students} AS students
       FROM import_batch AS batch WHERE id LIKE 't%x%'`,
    )
    .all();
  for (const { undone, readings, students: added } of batches)
    expect([readings, added]).toEqual(undone === 1 ? [0, 0] : [SEASON_READINGS, 1]);
  const known = new Map(batches.map(({ id, undone }) => [id, undone]));
  for (const [what, alias] of acknowledged)
    expect(known.get(alias)).toEqual(what === "undone" ? 1 : expect.any(Number));
}

async function stateOf(db: Database): Promise<readonly [TableDigests, unknown]> {
  const merged = db.sqlite.prepare("SELECT id, merged_into FROM student ORDER BY id").all();
  return [await digestTables(db, TOUCHED), merged];
}

/** What each standing change makes of the academy, by its kind. */
async function statesOf(db: Database): Promise<Map<string | undefined, unknown>> {
  const states = new Map<string | undefined, unknown>([[undefined, await stateOf(db)]]);
  for (const [kind, make] of [["split-session", splitFirst] as const, ["merge-students", mergeBoth] as const]) {
    const changeId = make(db);
    states.set(kind, await stateOf(db));
    undoChange(db, changeId);
    expect(await stateOf(db)).toEqual(states.get(undefined));
  }
  return states;
}

describe.concurrent("D1: killed while records change", () => {
  const limit = { timeout: KILLS_TIMEOUT_MS };

  it("undo of an import: all of its rows are there or none, and what was acknowledged as undone is", limit, () =>
    inFolder(async (folder) => {
      (await openSeason(path.join(folder, "proofband.db"))).close();
      report("undo of an import", await killRepeatedly("undo", folder, requireWholeBatches));
    }),
  );

  it("split, merge and their undo: the records are as before or after, as the change on file says", limit, () =>
    inFolder(async (folder) => {
      const db = await openSeason(path.join(folder, "proofband.db"));
      const states = await statesOf(db);
      db.close();
      const acknowledged = await killRepeatedly("records", folder, async (reopened, said) => {
        const open = openChange(reopened);
        expect(await stateOf(reopened)).toEqual(states.get(open?.kind));
        const undone = said.filter(([what]) => what === "undone").map(([, id]) => id);
        expect(undone).not.toContain(String(open?.id));
        // Acknowledged as made and not as undone: it stands, or its undoing was written just then.
        const made = said.findLast(([what]) => what === "made")?.[1];
        const newest = reopened.sqlite.prepare<[], number>("SELECT max(id) FROM record_change").pluck().get() ?? 0;
        expect(newest).toBeGreaterThanOrEqual(Number(made ?? 0));
      });
      report("split, merge and undo", acknowledged);
    }),
  );

  it("backup: whatever bears the name of a copy is one, compared with its digests; the data are untouched", limit, () =>
    inFolder(async (folder) => {
      const db = await openSeason(path.join(folder, "proofband.db"));
      const before = await digestTables(db);
      db.close();
      const copies = path.join(folder, "copies");
      const acknowledged = await killRepeatedly("backup", folder, async (reopened, said) => {
        expect(await digestTables(reopened)).toEqual(before);
        const there = existsSync(copies) ? readdirSync(copies).filter((name) => name.endsWith(".db")) : [];
        for (const [, name] of said) expect(there).toContain(name);
        for (const name of there) {
          expect(await checkBackup(path.join(copies, name))).toMatchObject({ kind: "sound", against: "manifest" });
          rmSync(path.join(copies, name));
        }
      });
      report("backup", acknowledged);
    }),
  );
});
