import { spawn } from "node:child_process";
import { once } from "node:events";
import { afterAll, beforeAll, expect, it } from "vitest";
import { databaseFile } from "@/app/_server/database";
import type { Viewer } from "@/app/_server/gate";
import { findImportDraft, keepUpload } from "@/app/_server/import/import-desk";
import { digestTables } from "@/db/backup";
import { openDatabase } from "@/db/client";
import { startAcademy } from "../app/server/own-academy-data";
import { bigFile, CROWDED, enterBigStudents } from "../bench/big-file";
import { builtScript } from "../built-script";

// D1 for an import that another thread writes: killed in the middle it leaves nothing, and no hand is needed.

const TRIES = 5;
const ROWS = 60_000;
/** Written in so many milliseconds on an idle machine; kills fall within. */
const WRITTEN_WITHIN_MS = 900;

let viewer: Viewer;
let folder: string;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, folder, remove } = await startAcademy());
  enterBigStudents(viewer, bigFile(ROWS, 3, CROWDED).aliases);
});
afterAll(() => remove());

/** Starts the import and kills it so long after its first row was written; says whether it had ended by then. */
async function killAfter(draftId: string, milliseconds: number): Promise<"killed" | "written"> {
  const child = spawn(process.execPath, [builtScript("tests/trust/import-process.ts"), draftId], {
    env: { ...process.env, PROOFBAND_DATA: folder },
    stdio: ["ignore", "pipe", "inherit"],
  });
  let said = "";
  child.stdout.on("data", (part) => {
    said += String(part);
  });
  const exited = once(child, "exit");
  while (!said.includes("writing") && child.exitCode === null) await new Promise((resolve) => setTimeout(resolve, 2));
  await new Promise((resolve) => setTimeout(resolve, milliseconds));
  child.kill("SIGKILL");
  await exited;
  return said.includes("imported") ? "written" : "killed";
}

it(`D1: an import of ${ROWS} rows killed at ${TRIES} moments is there whole or not at all`, {
  timeout: 300_000,
}, async () => {
  const draftId = keepUpload(viewer, "killed.csv", bigFile(ROWS, 3, CROWDED).bytes);
  const before = await digestTables(viewer.db);
  const outcomes: string[] = [];
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const delay = Math.round((attempt * WRITTEN_WITHIN_MS) / (2 * TRIES));
    const ended = await killAfter(draftId, delay);
    const reopened = openDatabase(databaseFile("own"));
    expect(reopened.sqlite.pragma("integrity_check", { simple: true })).toBe("ok");
    expect(reopened.sqlite.pragma("foreign_key_check")).toEqual([]);
    const readings = reopened.sqlite.prepare<[], number>("SELECT count(*) FROM reading").pluck().get();
    outcomes.push(`${delay} ms: ${readings}`);
    if (readings === 0) expect(await digestTables(reopened)).toEqual(before);
    else expect([readings, ended]).toEqual([ROWS, expect.any(String)]);
    reopened.close();
    if (readings !== 0) break;
    expect(findImportDraft(viewer, draftId)?.fileName).toBe("killed.csv");
  }
  console.log(`D1: ${outcomes.join(", ")}`);
  expect(outcomes.filter((outcome) => outcome.endsWith(": 0")).length).toBeGreaterThan(0);
});
