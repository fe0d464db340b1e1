import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { findImportDraft, keepUpload } from "@/app/_server/import/import-desk";
import { findOutcome } from "@/app/_server/import/import-outcome";
import { loadRunning } from "@/app/_server/import/import-running";
import { loadPastImport } from "@/app/_server/import/past-import";
import { loadPastImports } from "@/app/_server/import/past-imports";
import { undoBatch } from "@/app/_server/import/undo-desk";
import { whenWritable } from "@/app/_server/import/write-gate";
import { progressOf, startImport, startUndo, stopJob } from "@/app/_server/import/write-jobs";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { digestTables } from "@/db/backup";
import { readImportBatches } from "@/db/read/import-batches";
import { bigFile, CROWDED, enterBigStudents } from "../../bench/big-file";
import { startAcademy } from "./own-academy-data";

let viewer: Viewer;
let remove: () => void;
/** Enough for a thread of its own; `npm run bench -- --only big-import` does it with 100,000. */
const READINGS = 12_000;
const from = { door: "page", who: "Coach Lark" } as const;
const MEASURED = ["student", "consent", "session", "capture", "stated_capture_sd", "swing", "reading", "look_noise"];

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  enterBigStudents(viewer, bigFile(READINGS, 1, CROWDED).aliases);
});
afterAll(() => remove());

async function held() {
  const { student: _student, ...rest } = await digestTables(viewer.db, MEASURED);
  return rest;
}

describe("a large import beside the server's thread", () => {
  it("is written whole while pages are answered, judged, and taken back whole", { timeout: 300_000 }, async () => {
    const before = await held();
    const draftId = keepUpload(viewer, "big.csv", bigFile(READINGS, 1, CROWDED).bytes);
    const job = startImport(viewer, draftId, from);
    expect(startImport(viewer, draftId, from)).toBe(job);
    expect([job.size, loadRunning(viewer, draftId)?.ended]).toEqual(["large", "no"]);
    let answered = 0;
    let seen = 0;
    let ended = false;
    void job.finished.then(() => {
      ended = true;
    });
    while (!ended) {
      const { settled, total } = progressOf(job);
      expect(settled).toBeGreaterThanOrEqual(seen);
      expect(settled).toBeLessThanOrEqual(total);
      seen = settled;
      const readings = viewer.db.sqlite.prepare("SELECT count(*) FROM reading").pluck().get();
      expect([0, READINGS]).toContain(readings);
      await loadRoster(viewer, { sort: undefined, page: undefined });
      answered += 1;
      // Asked without a pause, the pages alone would fill a core, and the job take thrice as long.
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    expect(job).toMatchObject({ state: "done", outcome: "imported" });
    expect(progressOf(job)).toEqual({ settled: READINGS, total: READINGS });
    expect(answered).toBeGreaterThan(3);
    expect(findOutcome(viewer, draftId)).toMatchObject({ kind: "imported", readings: READINGS, batchId: job.batchId });
    expect(findImportDraft(viewer, draftId)).toBeNull();
    expect(viewer.db.sqlite.pragma("integrity_check", { simple: true })).toBe("ok");

    const page = loadPastImport(viewer, job.batchId, undefined);
    expect(page?.undo.form).toMatchObject({ batchId: job.batchId, error: "" });
    expect(await undoBatch(viewer, job.batchId, "unsure")).toBe("not-sure");
    const undo = startUndo(viewer, job.batchId, READINGS);
    await undo.finished;
    expect(undo).toMatchObject({ size: "large", state: "done", outcome: "undone" });
    expect(await held()).toEqual(before);
    expect(loadPastImport(viewer, job.batchId, undefined)?.undo.links[0]?.href).toBe(`/import/${job.batchId}`);
    // The file lies there as it came, and can be imported again.
    expect(findImportDraft(viewer, job.batchId)?.fileName).toBe("big.csv");
    expect(loadPastImports(viewer).table?.rows.length).toBe(1);
  });

  it("that is stopped half way leaves nothing, and its file is still there", { timeout: 120_000 }, async () => {
    const before = await digestTables(viewer.db);
    const draftId = keepUpload(viewer, "stopped.csv", bigFile(READINGS, 2, CROWDED).bytes);
    const job = startImport(viewer, draftId, from);
    while (progressOf(job).settled === 0 && job.state !== "failed")
      await new Promise((resolve) => setTimeout(resolve, 2));
    stopJob(job);
    await job.finished;
    expect(progressOf(job).settled).toBeLessThan(READINGS);
    expect(job.state).toBe("stopped");
    expect(loadRunning(viewer, draftId)).toMatchObject({
      ended: "yes",
      stop: null,
      again: { href: `/import/${draftId}` },
    });
    const { draft: _draft, ...after } = await digestTables(viewer.db);
    const { draft: _before, ...rest } = before;
    expect(after).toEqual(rest);
    expect(findImportDraft(viewer, draftId)?.fileName).toBe("stopped.csv");
    // Nobody waits at the gate any more.
    await whenWritable();
  });
});

describe("a small import", () => {
  it("is written and judged by the server's thread; its page says what came of it, and by whom", async () => {
    const rows = ["student,date,club,swing,fundamental,value", "Bench 1000,2026-06-01,7-iron,1,hinge,88"];
    const draftId = keepUpload(viewer, "small.csv", Buffer.from(rows.join("\n")));
    const job = startImport(viewer, draftId, { door: "http", who: "The bay’s phone" });
    await job.finished;
    expect(job).toMatchObject({ size: "small", state: "done", outcome: "imported" });
    expect(readImportBatches(viewer.db, viewer.scope)[0]).toMatchObject({ door: "http", fileName: "small.csv" });
    expect(loadPastImport(viewer, job.batchId, undefined)?.lede).toContain("The bay’s phone, by key");
    expect(loadRunning(viewer, draftId)).toBeNull();
  });

  it("that fails is told so and leaves nothing: the file stays, and the next one goes on", async () => {
    const rows = ["student,date,club,swing,fundamental,value", "Bench 1000,2026-06-02,7-iron,1,hinge,89"];
    const draftId = keepUpload(viewer, "fails.csv", Buffer.from(rows.join("\n")));
    viewer.db.sqlite.exec("CREATE TRIGGER fail AFTER INSERT ON reading BEGIN SELECT RAISE(ABORT, 'disk failed'); END");
    const failed = startImport(viewer, draftId, from);
    await failed.finished;
    viewer.db.sqlite.exec("DROP TRIGGER fail");
    expect(failed).toMatchObject({ state: "failed", failure: "disk failed" });
    expect(findImportDraft(viewer, draftId)?.fileName).toBe("fails.csv");
    const next = startImport(viewer, draftId, from);
    await next.finished;
    expect(next).toMatchObject({ state: "done", outcome: "imported" });
  });
});
