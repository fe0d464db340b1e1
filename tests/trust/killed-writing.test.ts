import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { type Database, openDatabase } from "@/db/client";
import { seededUniform, startChild } from "./child";
import { KILLS, KILLS_TIMEOUT_MS, LONGEST_MS } from "./kill-count";
import { SESSION_READINGS } from "./own-academy";

// D1: SIGKILL after a random 0 to 400 ms in a save and in an import.

const SEED = 20261126;
/** Sessions and readings of the sample that is imported. */
const SAMPLE = { sessions: 9, readings: 90 };

function requireSound(db: Database): void {
  expect(db.sqlite.pragma("integrity_check", { simple: true })).toBe("ok");
  expect(db.sqlite.pragma("foreign_key_check")).toEqual([]);
}

function pluck<T>(db: Database, sql: string): T[] {
  return db.sqlite.prepare<[], T>(sql).pluck().all();
}

function requireWholeSaves(db: Database, acknowledged: readonly string[]): void {
  const readings = `SELECT session.id FROM session LEFT JOIN reading ON reading.session_id = session.id
    GROUP BY session.id HAVING count(reading.id) <> ${SESSION_READINGS}`;
  expect(pluck(db, readings)).toEqual([]);
  const sessions = pluck<string>(db, "SELECT id FROM session");
  const answered = pluck<string>(db, "SELECT outcome FROM form_receipt WHERE kind LIKE 'session-form%'");
  const told = answered.map((outcome) => (JSON.parse(outcome) as { answer: { sessionId: string } }).answer.sessionId);
  expect([...told].sort()).toEqual([...sessions].sort());
  for (const id of acknowledged) expect(sessions).toContain(id);
}

function requireWholeImports(db: Database, acknowledged: readonly string[]): void {
  const count = (what: string) => `(SELECT count(*) FROM ${what} WHERE ${what}.student_id = student.id)`;
  const students = db.sqlite
    .prepare<[], { alias: string; sessions: number; readings: number; batches: number }>(
      `SELECT alias, ${count("session")} AS sessions, ${count("reading")} AS readings,
         (SELECT count(*) FROM import_batch) AS batches FROM student WHERE alias LIKE 'Nia%'`,
    )
    .all();
  for (const each of students) expect(each).toMatchObject({ ...SAMPLE, batches: students.length });
  for (const alias of acknowledged) expect(students.map((each) => each.alias)).toContain(alias);
}

async function killRepeatedly(act: "save" | "import", lane: number, tries: number): Promise<number> {
  const folder = mkdtempSync(path.join(tmpdir(), "proofband-killed-"));
  const uniform = seededUniform(SEED + lane * 1000 + (act === "save" ? 0 : 1));
  const acknowledged: string[] = [];
  try {
    for (let trial = 0; trial < tries; trial++) {
      const child = startChild("writing-process.ts", [act, `${lane}t${trial}`], { PROOFBAND_DATA: folder });
      // Every third kill waits for something acknowledged (an import only once it is judged): on a busy machine the others,
      // which fall into it, may all come before.
      await child.saying(trial % 3 === 0 ? "acknowledged" : "begun");
      await new Promise((resolve) => setTimeout(resolve, uniform() * LONGEST_MS));
      child.process.kill("SIGKILL");
      await child.ended;
      acknowledged.push(...child.lines.flatMap((line) => /^acknowledged (.+)$/.exec(line)?.[1] ?? []));
      // As the next start opens it: nobody's hand is needed.
      const db = openDatabase(path.join(folder, "academy", "proofband.db"));
      requireSound(db);
      if (act === "save") requireWholeSaves(db, acknowledged);
      else requireWholeImports(db, acknowledged);
      // What was there after one kill has to be there after the next.
      const there = act === "save" ? "SELECT id FROM session" : "SELECT alias FROM student WHERE alias LIKE 'Nia%'";
      acknowledged.push(...pluck<string>(db, there).filter((name) => !acknowledged.includes(name)));
      db.close();
    }
    return acknowledged.length;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

describe("D1: killed while it writes", () => {
  for (const act of ["save", "import"] as const) {
    it(
      `${act}: what was acknowledged is there, the rest whole or absent, and the data are sound`,
      async () => {
        const kept = await Promise.all([0, 1].map((lane) => killRepeatedly(act, lane, KILLS / 2)));
        console.log(`D1 ${act}: ${KILLS} kills, seed ${SEED}, ${kept[0]} + ${kept[1]} written and kept`);
        expect(Math.min(...kept)).toBeGreaterThanOrEqual(2);
      },
      KILLS_TIMEOUT_MS,
    );
  }
});
