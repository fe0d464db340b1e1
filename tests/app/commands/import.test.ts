import { spawnSync } from "node:child_process";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { builtScript } from "../../built-script";
import { startAcademy } from "../server/own-academy-data";

const ROOT = path.join(import.meta.dirname, "../../..");
let folder: string;
let remove: () => void;
beforeAll(async () => {
  ({ folder, remove } = await startAcademy());
});
afterAll(() => remove());

function importing(...args: readonly string[]) {
  const { status, stdout, stderr, signal } = spawnSync(
    process.execPath,
    [builtScript("app/_commands/import.ts"), ...args],
    { cwd: ROOT, encoding: "utf8", env: { ...process.env, PROOFBAND_DATA: folder }, timeout: 50_000 },
  );
  return { status, said: stdout + stderr, signal };
}

const ANSWERS = ["--answer", "answer:student:nia=new-right", "--answer", "answer-givenBy:student:nia=mother"];

describe("npm run import", () => {
  it("reads a workbook, names its hidden sheet, says how each question is answered, and ends by itself", () => {
    const { status, said, signal } = importing("seed/samples/season.xlsx");
    expect([status, signal]).toEqual([1, null]);
    expect(said).toContain('--answer "answer:student:nia=new-right"');
    expect(said).toContain("Hidden in the workbook");
  });

  it("writes the same 90 readings from JSON, with a column said to be what it is", () => {
    const { status, said } = importing(
      "seed/samples/season.json",
      ...ANSWERS,
      "--answer",
      "answer:map:8=field:value",
      "--confirm",
    );
    expect([status, said.includes("90 readings are saved")]).toEqual([0, true]);
  });
});
