import { spawnSync } from "node:child_process";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { admitToStudent, type Viewer } from "@/app/_server/gate";
import { confirmImport } from "@/app/_server/import/write-import";
import { loadStudentVerdicts, type StudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { readStudents } from "@/db/read/students";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { builtScript } from "../../built-script";
import { startAcademy } from "./own-academy-data";

const ROOT = path.join(import.meta.dirname, "../../..");
let viewer: Viewer;
let folder: string;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, folder, remove } = await startAcademy());
});
afterAll(() => remove());

const FILMS = 10;
/** The last three films are off by 9 degrees of yaw: 0.7 x 9 on leans and hinge, 0.7 x 9 % less on the ball. */
const shift = (film: number): number => (film >= FILMS - 3 ? 6.3 : 0);
const waver = (film: number, place: number): number => [0, 1, -1, 0, 1, 0, -1][(3 * film + place) % 7] as number;

function rows(fundamentals: Readonly<Record<string, readonly [level: number, way: number]>>): string {
  const lines = Array.from({ length: FILMS }, (_, film) =>
    Object.entries(fundamentals).flatMap(([id, [level, way]], place) =>
      [-1, 0, 1, 0, 1].map((around, swing) => {
        const value = level + way * shift(film) + around + waver(film, place);
        const day = dayFromNumber(dayNumber("2026-03-01") + 9 * film);
        return `eli,${day},7-iron,${swing + 1},${id},${value.toFixed(1)}`;
      }),
    ),
  );
  return ["student,date,club,swing,fundamental,value", ...lines.flat()].join("\n");
}

async function importRows(fileName: string, text: string, answers: readonly (readonly [string, string])[]) {
  const file = Buffer.from(text).toString("base64");
  return confirmImport(viewer, { fileName, file, answers: answers as [string, string][] });
}

async function verdicts(): Promise<StudentVerdicts["tracks"]> {
  const id = readStudents(viewer.db, viewer.scope)[0]?.id ?? "";
  const student = admitToStudent(viewer, id);
  if (!student) throw new Error("no student");
  return (await loadStudentVerdicts({ ...viewer, student })).tracks;
}
const setupTilt = (tracks: StudentVerdicts["tracks"]) => {
  const found = tracks.find((track) => track.history.fundamental.id === "setup-tilt");
  if (!found) throw new Error("setup tilt isn't read");
  return found;
};

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

describe("a reading of another fundamental changes what is said of this one", () => {
  it("leans alone name nobody; hinge and ball read later from the same films name the phone, and the kept verdict goes", async () => {
    const leans = rows({ "setup-tilt": [5, 1], "top-tilt": [4, 1], "impact-tilt": [12, 1] });
    const first = await importRows("leans.csv", leans, [
      ["answer:student:eli", "new-left"],
      ["answer-givenBy:student:eli", "mother"],
      ["answer:left-sign", "neutral"],
    ]);
    expect(first).toMatchObject({ kind: "imported", sessions: FILMS });
    const before = setupTilt(await verdicts());
    expect(before.history.sessions.some((entry) => entry.fingerprint?.kind === "camera")).toBe(false);

    const more = rows({ hinge: [84, 1], "ball-position": [57, -1], "hip-sway": [2, 0] });
    expect(await importRows("more.csv", more, [])).toMatchObject({ kind: "imported", sessions: 0, conflicts: [] });
    const after = setupTilt(await verdicts());
    const named = after.history.sessions.slice(-3);
    expect(named.map((entry) => entry.fingerprint?.kind)).toEqual(["camera", "camera", "camera"]);
    const { verdict } = after;
    expect(verdict.errorBudget?.camera).toBeGreaterThan(before.verdict.errorBudget?.camera ?? Number.POSITIVE_INFINITY);
    expect(verdict.evidence.logBayesFactor).toBeLessThan(before.verdict.evidence.logBayesFactor);
  });

  it("the tracks command writes the widened doubt, and analyze on it says the pages' very verdicts", async () => {
    const noise = path.join(folder, "noise.ndjson");
    const tracks = run("tracks.ts", ["--noise", noise], "");
    const lines = tracks.trim().split("\n");
    const pages = await verdicts();
    for (const { history } of pages)
      expect(lines).toContain(JSON.stringify(JSON.parse(JSON.stringify(history.judged))));
    const door = run("analyze.ts", ["--looks", "--list", "0.05", "--noise", noise], tracks).trim().split("\n");
    const said = new Map(door.map((line) => JSON.parse(line) as TrackVerdict).map((each) => [each.id, each]));
    expect(said.size).toBe(pages.length);
    for (const { verdict } of pages) expect(said.get(verdict.id)).toEqual(JSON.parse(JSON.stringify(verdict)));
  });

  it("as of the second film with the phone off, the tracks command says what was said then", () => {
    const day = dayFromNumber(dayNumber("2026-03-01") + 9 * (FILMS - 2));
    const [whole, then] = [run("tracks.ts", [], ""), run("tracks.ts", ["--as-of", day], "")].map((text) =>
      text
        .trim()
        .split("\n")
        .map((line) => JSON.parse(line) as { id: string; sessions: readonly object[] }),
    );
    for (const track of then ?? [])
      expect(track.sessions).toEqual(
        whole?.find((each) => each.id === track.id)?.sessions.slice(0, track.sessions.length),
      );
  });
});
