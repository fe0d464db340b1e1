import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { admitToStudent, type Viewer } from "@/app/_server/gate";
import { type ImportDraft, previewImport } from "@/app/_server/import/import-desk";
import { confirmImport } from "@/app/_server/import/write-import";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { digestTables } from "@/db/backup";
import { readStudents } from "@/db/read/students";
import { insertOwnFundamental } from "@/db/write/own-fundamentals";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { builtScript } from "../../built-script";
import { readNile } from "../../reference/read-reference";
import { startAcademy } from "./own-academy-data";

const ROOT = path.join(import.meta.dirname, "../../..");
let viewer: Viewer;
let folder: string;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, folder, remove } = await startAcademy());
});
afterAll(() => remove());

const draft = (fileName: string, text: string | Buffer, answers: ImportDraft["answers"] = []): ImportDraft => ({
  fileName,
  file: Buffer.from(text).toString("base64"),
  answers,
});
const newStudent = (alias: string, hand: string): ImportDraft["answers"] => [
  [`answer:student:${alias}`, `new-${hand}`],
  [`answer-givenBy:student:${alias}`, "herself"],
];

function run(command: string, args: readonly string[], input: string): string {
  const done = spawnSync(process.execPath, [builtScript(path.join("app/_commands", command)), ...args], {
    cwd: ROOT,
    input,
    encoding: "utf8",
    env: { ...process.env, PROOFBAND_DATA: folder },
    maxBuffer: 64 * 1024 * 1024,
  });
  expect(`${command} ${done.status} ${done.stderr}`).toBe(`${command} 0 `);
  return done.stdout;
}

async function verdictsOf(alias: string): Promise<readonly TrackVerdict[]> {
  const id = readStudents(viewer.db, viewer.scope).find((student) => student.alias === alias)?.id ?? "";
  const student = admitToStudent(viewer, id);
  if (!student) throw new Error(`no ${alias}`);
  return (await loadStudentVerdicts({ ...viewer, student })).tracks.map((track) => track.verdict);
}

describe("from a file to a verdict", () => {
  it("nothing is written by a preview; a file that needs an answer writes nothing without it", async () => {
    const before = await digestTables(viewer.db);
    const file = draft("season-long.csv", readFileSync(path.join(ROOT, "seed/samples/season-long.csv")));
    expect((await previewImport(viewer, file)).plan).toBeNull();
    expect(await confirmImport(viewer, file)).toEqual({ kind: "nothing-ready" });
    expect(await digestTables(viewer.db)).toEqual(before);
  });

  it("the sample seasons are imported whole, 90 and 120 readings, and the same file again changes nothing", async () => {
    const long = readFileSync(path.join(ROOT, "seed/samples/season-long.csv"));
    const wide = readFileSync(path.join(ROOT, "seed/samples/season-wide.csv"));
    const first = await confirmImport(viewer, draft("season-long.csv", long, newStudent("nia", "right")));
    expect(first).toMatchObject({ kind: "imported", students: 1, sessions: 9, swings: 45, readings: 90, skipped: 0 });
    const second = await confirmImport(
      viewer,
      draft("season-wide.csv", wide, [...newStudent("tove", "left"), ["answer:left-sign", "neutral"]]),
    );
    expect(second).toMatchObject({ kind: "imported", students: 1, sessions: 8, swings: 40, readings: 120 });
    const before = await digestTables(viewer.db);
    expect(await confirmImport(viewer, draft("again.csv", long))).toMatchObject({ kind: "already-imported" });
    expect(await digestTables(viewer.db)).toEqual(before);
  });

  it("the same readings under another name of the file: all 90 on file already, none twice", async () => {
    const text = readFileSync(path.join(ROOT, "seed/samples/season-long.csv"), "utf8");
    const outcome = await confirmImport(viewer, draft("copy.csv", `${text}\r\n`));
    expect(outcome).toMatchObject({ kind: "imported", sessions: 0, readings: 0, skipped: 90, conflicts: [] });
  });

  it("analyze on the judged input of the pages says the very verdicts that the pages keep", async () => {
    const noise = path.join(folder, "noise.ndjson");
    const tracks = run("tracks.ts", ["--noise", noise], "");
    const lines = run("analyze.ts", ["--looks", "--list", "0.05", "--noise", noise], tracks).trim().split("\n");
    const door = new Map(lines.map((line) => JSON.parse(line) as TrackVerdict).map((verdict) => [verdict.id, verdict]));
    const pages = [...(await verdictsOf("Nia")), ...(await verdictsOf("Tove"))];
    expect(door.size).toBe(pages.length);
    for (const page of pages) expect(door.get(page.id)).toEqual(JSON.parse(JSON.stringify(page)));
  });
});

describe("the Nile (Cobb 1978) as an own fundamental, one reading a session, a third of a week apart", () => {
  const flow = readNile();
  const first = dayNumber("2026-01-03");

  it("proved, not before 1899, with sets that hold 1899", async () => {
    const like = BUILT_IN.find((entry) => entry.id === "hinge");
    if (!like || flow.length !== 100) throw new Error("no series");
    const goal = { low: null, high: 46 };
    const goals = { "short-iron": goal, iron: goal, hybrid: goal, wood: goal, driver: goal };
    // Twenty units of the series are one degree: 1120 becomes 56.
    const own = { ...like, id: "own-flow", ownName: "Flow", goals, cameraSdUnknown: 0, readerSd: 0.05, order: 900 };
    insertOwnFundamental(
      viewer.db,
      viewer.scope,
      { id: own.id, definition: JSON.stringify(own) },
      "2026-01-01T00:00:00Z",
    );
    const rows = flow.map((value, year) => `Nilo,${dayFromNumber(first + 3 * year)},7-iron,1,own-flow,${value / 20}`);
    const text = ["student,date,club,swing,fundamental,value", ...rows].join("\n");
    const outcome = await confirmImport(viewer, draft("nile.csv", text, newStudent("nilo", "right")));
    expect(outcome).toMatchObject({ kind: "imported", sessions: 100, readings: 100 });
    const verdict = (await verdictsOf("Nilo"))[0];
    expect(verdict).toMatchObject({ verdict: "gain", sessions: 100 });
    expect(verdict?.change?.set80).toContain(28);
    expect(verdict?.change?.set95).toContain(28);
    const proved = (verdict?.looks ?? []).findIndex((look) => look.verdict === "gain");
    // 1871 is index 0; nothing is said before the flow of 1899, index 28, is in.
    expect(proved).toBeGreaterThanOrEqual(28);
    expect(verdict?.change?.size.estimate).toBeCloseTo(-242.25 / 20, 0);
  });
});
