import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, it } from "vitest";
import { erasedDigest, erasedListOf, readErasedList } from "@/app/_server/erase/erased-list";
import { honourErasedList } from "@/app/_server/erase/honour-list";
import { type Database, openDatabase } from "@/db/client";
import { seededUniform, startChild } from "./child";
import { KILLS, KILLS_TIMEOUT_MS, LONGEST_MS } from "./kill-count";
import { openSeason, SEASON_READINGS } from "./killed-acts";
import { findBytes } from "./search-bytes";

// D1: SIGKILL after a random 0 to 400 ms in an erasure. It was acknowledged and is whole, or the next start makes it so, or
// the student is whole.

const SEED = 20261129;
/** The table of trust asks for 20 at every push. */
const TRIALS = Math.max(KILLS, 20);

interface Left {
  readonly id: string;
  readonly alias: string;
  readonly readings: number;
}

function studentsOf(db: Database): Left[] {
  const readings = "(SELECT count(*) FROM reading WHERE student_id = student.id)";
  return db.sqlite
    .prepare<[], Left>(`SELECT id, alias, ${readings} AS readings FROM student WHERE alias LIKE 't%x%'`)
    .all();
}

it("erasure: whole or absent, what was acknowledged is gone, and a start ends what was begun", {
  timeout: KILLS_TIMEOUT_MS + TRIALS * 10_000,
}, async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "proofband-killed-"));
  const file = path.join(folder, "proofband.db");
  const uniform = seededUniform(SEED);
  const counts = { acknowledged: 0, completed: 0, whole: 0 };
  try {
    (await openSeason(file)).close();
    for (let trial = 0; trial < TRIALS; trial++) {
      const child = startChild("erasing-process.ts", [file, `t${trial}`], {});
      // Every fifth kill waits for something acknowledged; half of the others fall into the erasure's own milliseconds.
      await child.saying(trial % 5 === 0 ? "acknowledged" : "begins");
      await new Promise((resolve) => setTimeout(resolve, uniform() * (trial % 2 === 0 ? LONGEST_MS : LONGEST_MS / 10)));
      child.process.kill("SIGKILL");
      await child.ended;
      const acknowledged = child.lines.flatMap((line) => {
        const [, alias, id] = /^acknowledged (\S+) (\S+)$/.exec(line) ?? [];
        return alias && id ? [{ alias, id }] : [];
      });
      counts.acknowledged += acknowledged.length;
      const db = openDatabase(file);
      expect(db.sqlite.pragma("integrity_check", { simple: true })).toBe("ok");
      expect(db.sqlite.pragma("foreign_key_check")).toEqual([]);
      for (const { readings } of studentsOf(db)) expect(readings).toBe(SEASON_READINGS);
      const before = studentsOf(db).length;
      counts.completed += honourErasedList(db);
      const left = studentsOf(db);
      expect(before - left.length).toBeLessThanOrEqual(1);
      counts.whole += left.length;
      const listed = readErasedList(erasedListOf(file));
      for (const { id } of left) expect(listed.has(erasedDigest({ academyId: "a1", studentId: id }))).toBe(false);
      for (const { alias, id } of acknowledged) {
        expect(left.map((each) => each.alias)).not.toContain(alias);
        expect(listed.has(erasedDigest({ academyId: "a1", studentId: id }))).toBe(true);
      }
      // Closed, so that the journal is taken in; what is left of the student is looked for in the raw file.
      db.close();
      const last = acknowledged.at(-1);
      if (last) expect(findBytes(folder, [last.id])).toEqual([]);
    }
    console.log(`D1 erase: ${TRIALS} kills, seed ${SEED}, ${JSON.stringify(counts)}`);
    expect(counts.acknowledged).toBeGreaterThanOrEqual(TRIALS / 5);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
