import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadJudgedPart } from "@/app/_server/archive/load-judged";
import type { StudentViewer } from "@/app/_server/gate";
import { loadFundamental, loadFundamentalSource, loadPlanAnswer } from "@/app/_server/season/load-fundamental";
import { builtScript } from "../../built-script";
import { admitFilmed } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

let mine: StudentViewer;
let folder: string;
let remove: () => void;

beforeAll(async () => {
  const started = await startAcademy();
  ({ folder, remove } = started);
  mine = await admitFilmed(started.viewer, "Zephyrine");
});
afterAll(() => remove());

const part = (name: "verdict" | "tracks" | "noise") => loadJudgedPart(mine, "hinge", undefined, name);

/** Runs the batch door on what was downloaded, as an outsider would. */
async function analyzed(): Promise<string> {
  const noise = path.join(folder, "noise.ndjson");
  writeFileSync(noise, await part("noise"));
  const done = spawnSync(process.execPath, [builtScript("app/_commands/analyze.ts"), "--looks", "--noise", noise], {
    input: await part("tracks"),
    encoding: "utf8",
    env: { ...process.env, PROOFBAND_DATA: "" },
  });
  expect(`${done.status} ${done.stderr}`).toBe("0 ");
  return done.stdout;
}

describe("what a fundamental was judged from, as files", () => {
  it("analyze on the judged track and its noise models writes the verdict’s file, to the byte", async () => {
    expect(await analyzed()).toBe(await part("verdict"));
  });

  it("its numbers are those of the page", async () => {
    const { evidence, policyVersion, levelNow } = JSON.parse(await analyzed());
    const { verdict } = await loadFundamental(mine, "hinge", undefined);
    const source = await loadFundamentalSource(mine, "hinge", undefined);
    expect(source.verdict.levelNow).toEqual(levelNow);
    const row = (name: string) => verdict.figures?.figures.rows.find(({ cells }) => cells[0] === name)?.cells[1] ?? "";
    expect(row("The films fit better, by")).toContain(`(ln ${evidence.logBayesFactor.toFixed(2).replace("-", "−")})`);
    expect(row("What this look asks for")).toContain(`(ln ${evidence.limit.toFixed(2)})`);
    expect(row("That nothing lasting happened")).toBe(`${(evidence.noChange * 100).toFixed(1)} of 100`);
    expect(row("Tracks that change on this roster")).toBe(`${(evidence.priorChange * 100).toFixed(1)} of 100`);
    expect(row("Policy version")).toBe(policyVersion);
    expect(row("Sessions judged")).toBe("8 of 8");
    expect(verdict.figures?.looks?.rows).toHaveLength(8);
  });

  it("names nobody and holds no note", async () => {
    expect(`${await part("verdict")}${await part("noise")}`).not.toMatch(/Zephyrine/);
    expect(await part("tracks")).not.toMatch(/Zephyrine/);
  });
});

describe("films that are asked about", () => {
  it("are answered by the page and by the sliders alike, and asking changes nothing on file", async () => {
    const before = mine.db.sqlite.pragma("data_version");
    const changes = () => mine.db.sqlite.prepare("SELECT total_changes()").pluck().get();
    await loadFundamental(mine, "hinge", undefined);
    const counted = changes();
    const wished = { films: "4", swings: "6", care: "usual" };
    const page = await loadFundamental(mine, "hinge", undefined, wished);
    const said = await loadPlanAnswer(mine, "hinge", undefined, wished);
    expect(said?.plan).toMatch(/^4 more films on different days, 6 swings each/);
    expect(page.settle?.asked?.said).toEqual(said);
    expect(changes()).toBe(counted);
    expect(mine.db.sqlite.pragma("data_version")).toEqual(before);
  });

  it("nobody asks: no chance is worked out", async () => {
    expect((await loadFundamental(mine, "hinge", undefined)).settle?.asked).toBeNull();
  });
});
