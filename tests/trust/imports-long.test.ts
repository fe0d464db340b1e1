import { monitorEventLoopDelay } from "node:perf_hooks";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { findImportHead, type ImportDraft, keepUpload, previewImport } from "@/app/_server/import/import-desk";
import { followImport, forgetJob, stopImport } from "@/app/_server/import/import-jobs";
import { confirmImport } from "@/app/_server/import/write-import";
import { digestTables } from "@/db/backup";
import { startAcademy } from "../app/server/own-academy-data";
import { spentSince } from "../cpu-time";
import { makeWorkbook, STYLE } from "../lib/ingest/made-workbook";

const ROWS = 100_000;
/** Longest that others may wait for the server's thread, of 100 looks 99, while a long file is read. */
const LONGEST_DELAY_MS = 200;

let viewer: Viewer;
let remove: () => void;
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
});
afterAll(() => remove());

const day = (at: number): string => new Date(Date.UTC(2024, 0, 1 + Math.floor(at / 200))).toISOString().slice(0, 10);
const line = (at: number): string =>
  `Nia,${day(at)},7-iron,${(at % 100) + 1},${at % 200 < 100 ? "hinge" : "foot-line"},${(60 + (at % 25)) / (at % 200 < 100 ? 1 : 10)}`;

function longFile(): Uint8Array {
  const lines = Array.from({ length: ROWS }, (_, at) => line(at));
  return new TextEncoder().encode(`student,date,club,swing,fundamental,value\n${lines.join("\n")}\n`);
}

const ANSWERS: ImportDraft["answers"] = [
  ["answer:student:nia", "new-right"],
  ["answer-givenBy:student:nia", "her mother"],
];

describe(`a file of ${ROWS} rows`, () => {
  it("is read beside the server's thread: every row ready, 99 of 100 waits under 200 ms", async () => {
    const file = Buffer.from(longFile()).toString("base64");
    const read = async () => {
      const delay = monitorEventLoopDelay({ resolution: 5 });
      delay.enable();
      const begun = performance.now();
      const preview = await previewImport(viewer, { fileName: "long.csv", file, answers: ANSWERS });
      const ms = performance.now() - begun;
      delay.disable();
      const p99 = delay.percentile(99) / 1e6;
      console.log(
        `${ROWS} rows in ${(ms / 1000).toFixed(1)} s, delay p99 ${p99.toFixed(0)} ms, longest ${(delay.max / 1e6).toFixed(0)} ms`,
      );
      return { preview, p99 };
    };
    // What holds up the thread does so each time; what else the machine does may be over the next time.
    let { preview, p99 } = await read();
    for (let tries = 1; tries < 3 && p99 >= LONGEST_DELAY_MS; tries++) ({ preview, p99 } = await read());
    expect([preview.rowsReady, preview.restRows.length]).toEqual([ROWS, 0]);
    expect(preview.plan?.sessions.reduce((sum, { session }) => sum + session.swings.length, 0)).toBe(ROWS / 2);
    expect(p99).toBeLessThan(LONGEST_DELAY_MS);
  });

  it("as a workbook it is read in the same capped worker", async () => {
    const rows = Array.from({ length: ROWS }, (_, at) =>
      line(at)
        .split(",")
        .map((cell, place) =>
          place === 1
            ? { raw: String(45_292 + Math.floor(at / 200)), style: STYLE.date }
            : place > 2 && place !== 4
              ? { raw: cell }
              : cell,
        ),
    );
    const bytes = makeWorkbook([
      { name: "Long", rows: [["student", "date", "club", "swing", "fundamental", "value"], ...rows] },
    ]);
    const preview = await previewImport(viewer, {
      fileName: "long.xlsx",
      file: Buffer.from(bytes).toString("base64"),
      answers: ANSWERS,
    });
    expect([preview.issues, preview.rowsReady]).toEqual([[], ROWS]);
  });

  it("can be stopped; the upload stays and is read again when it is asked for", async () => {
    const id = keepUpload(viewer, "long.csv", longFile());
    const head = findImportHead(viewer, id);
    if (!head) throw new Error("no upload");
    const following = followImport(viewer, id, head);
    await wait(300);
    stopImport(viewer, id);
    expect(await following).toEqual({ state: "stopped" });
    expect(await followImport(viewer, id, head)).toEqual({ state: "stopped" });
    forgetJob(viewer, id);
    let view = await followImport(viewer, id, head);
    for (let tries = 0; view?.state === "running" && tries < 30; tries++) {
      if (view.of > 0) expect(view.read).toBeLessThanOrEqual(view.of);
      view = await followImport(viewer, id, head);
    }
    expect(view).toMatchObject({
      state: "done",
      page: { title: `0 of ${ROWS} rows are ready; one answer frees the rest` },
    });
    // What it rests on is the same, so looking again is no new reading.
    const begun = process.cpuUsage();
    expect((await followImport(viewer, id, head))?.state).toBe("done");
    expect(spentSince(begun)).toBeLessThan(500);
  });
});

describe("no partial write", () => {
  it("24 files with one fault each (seed 7): what is said to be written is what is written", async () => {
    let state = 7;
    const random = (below: number): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return Math.floor((state / 2 ** 32) * below);
    };
    const faults = ["NaN", "1e400", '"', "", "2036-01-01", "Zed", "\u0000", "1,234", "a,b,c,d", "12 apples"];
    const rowsOn = (): number =>
      viewer.db.sqlite.prepare<[], number>("SELECT count(*) FROM reading").pluck().get() ?? 0;
    for (let file = 0; file < 24; file++) {
      const rows = Array.from({ length: 10 }, (_, at) => [
        "Nia",
        `2025-0${1 + (file % 9)}-1${at % 10}`,
        "7-iron",
        String(at + 1 + 10 * file),
        "hinge",
        String(60 + at),
      ]);
      const row = rows[random(10)];
      if (row) row[random(6)] = faults[random(faults.length)] ?? "";
      const text = `student,date,club,swing,fundamental,value\n${rows.map((cells) => cells.join(",")).join("\n")}\n`;
      const draft = { fileName: `${file}.csv`, file: Buffer.from(text).toString("base64"), answers: ANSWERS };
      const preview = await previewImport(viewer, draft);
      const before = rowsOn();
      const digest = await digestTables(viewer.db);
      const outcome = await confirmImport(viewer, draft);
      if (outcome.kind === "imported") expect(rowsOn() - before).toBe(outcome.readings);
      else expect(await digestTables(viewer.db)).toEqual(digest);
      if (outcome.kind === "imported")
        expect(outcome.readings + outcome.skipped + outcome.conflicts.length).toBe(preview.rowsReady);
    }
    expect(rowsOn()).toBeGreaterThan(150);
  }, 180_000);
});
