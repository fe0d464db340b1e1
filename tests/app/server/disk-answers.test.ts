import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { isBehind } from "@/app/_server/analysis/judging";
import { loadNotSaved } from "@/app/_server/door/load-not-saved";
import { ownPath } from "@/app/_server/door/own-path";
import { answerDiskFailure, whenDiskFails } from "@/app/_server/door/when-disk-fails";
import type { Viewer } from "@/app/_server/gate";
import { findImportHead, keepAnswers, keepUpload } from "@/app/_server/import/import-desk";
import { loadFrame } from "@/app/_server/load-frame";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { closeDisk, fillDisk, freeDisk, lockDisk, startImpatient } from "./failing-disk";

let viewer: Viewer;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, remove } = await startImpatient());
}, 60_000);
afterAll(() => remove());
afterEach(() => freeDisk(viewer));

function open<T>(model: T | null | undefined): T {
  if (model === null || model === undefined) throw new Error("not there");
  return model;
}

describe("a press, an upload and a page that the disk takes nothing of", () => {
  it("a press leads to a page that says so and leads back, and to nowhere else", async () => {
    lockDisk();
    const press = whenDiskFails("/students/s1/history", () => keepUpload(viewer, "a.csv", new Uint8Array([65])));
    await expect(press).rejects.toMatchObject({
      digest: expect.stringContaining("/not-saved?why=busy&back=%2Fstudents%2Fs1%2Fhistory"),
    });
    const page = loadNotSaved(viewer, { why: "busy", back: "/students/s1/history?told=undone" });
    expect(page.parts[0]?.heading).toMatch(/Another program is writing/);
    expect(page.parts[0]?.links[0]?.href).toBe("/students/s1/history?told=undone");
    for (const foreign of [
      "//elsewhere.invalid",
      "/\\elsewhere.invalid",
      "https://elsewhere.invalid",
      "javascript:1",
      "",
    ])
      expect(ownPath(foreign)).toBe("/record");
    await expect(whenDiskFails("/record", () => Promise.reject(new TypeError("mine")))).rejects.toThrow("mine");
  });

  it("an upload is answered with a page and a status: 503 for now, 507 without room", async () => {
    const upload = (bytes: number) =>
      answerDiskFailure(viewer.words, async () => {
        keepUpload(viewer, "season.csv", new Uint8Array(bytes));
        return new Response("taken");
      });
    lockDisk();
    const busy = await upload(10);
    expect([busy.status, await busy.text()]).toEqual([
      503,
      expect.stringMatching(/Nothing was saved[\s\S]*Another program/),
    ]);
    freeDisk(viewer);
    fillDisk(viewer);
    const full = await upload(2_000_000);
    expect([full.status, await full.text()]).toEqual([507, expect.stringMatching(/The disk is full/)]);
    freeDisk(viewer);
    closeDisk(viewer);
    const closed = await upload(10);
    const said = /The disk can’t be written to/;
    expect([closed.status, await closed.text()]).toEqual([503, expect.stringMatching(said)]);
    expect(loadNotSaved(viewer, { why: "read-only" }).parts[0]?.heading).toMatch(said);
    const why = whenDiskFails("/record", () => keepUpload(viewer, "a.csv", new Uint8Array([65])));
    await expect(why).rejects.toMatchObject({ digest: expect.stringContaining("/not-saved?why=read-only") });
    freeDisk(viewer);
    expect(await (await upload(10)).text()).toBe("taken");
  });

  it("answers of an import wait and stand on its page again, and are kept by the next press", () => {
    const draftId = keepUpload(viewer, "season.csv", new Uint8Array([65]));
    const answers = () => open(findImportHead(viewer, draftId)).answers;
    lockDisk();
    const give = (word: string) =>
      keepAnswers(viewer, draftId, open(findImportHead(viewer, draftId)), new Map([["answer:hand", word]]));
    expect(() => give("left")).toThrow(/locked/);
    expect(answers()).toEqual([["answer:hand", "left"]]);
    freeDisk(viewer);
    give("right");
    expect(answers()).toEqual([["answer:hand", "right"]]);
  });

  it("pages show what was judged before and say so; what was saved is judged once the disk takes it", async () => {
    viewer.db.sqlite.exec("UPDATE student SET revision = revision + 1");
    lockDisk();
    await loadRules(viewer);
    expect(isBehind(viewer.scope.academyId)).toBe(true);
    expect(JSON.stringify(loadFrame(viewer))).toContain("isn’t judged yet");
    freeDisk(viewer);
    await loadRules(viewer);
    expect(isBehind(viewer.scope.academyId)).toBe(false);
    expect(JSON.stringify(loadFrame(viewer))).not.toContain("isn’t judged yet");
  });
});
