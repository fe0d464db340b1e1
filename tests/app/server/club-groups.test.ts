import { readFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { confirmImport } from "@/app/_server/import/write-import";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { loadFundamental } from "@/app/_server/season/load-fundamental";
import { changeClubs } from "@/app/_server/settings/club-desk";
import { readLookNoise } from "@/db/read/looks";
import { readStudents } from "@/db/read/students";
import { startAcademy } from "./own-academy-data";

const SAMPLE = path.join(import.meta.dirname, "../../../seed/samples/season-long.csv");
let viewer: Viewer;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const file = {
    fileName: "season-long.csv",
    file: readFileSync(SAMPLE).toString("base64"),
    answers: [
      ["answer:student:nia", "new-right"],
      ["answer-givenBy:student:nia", "herself"],
    ],
  } as const;
  if ((await confirmImport(viewer, file)).kind !== "imported") throw new Error("not imported");
});
afterAll(() => remove());

function nia(): StudentViewer {
  const student = admitToStudent(viewer, readStudents(viewer.db, viewer.scope)[0]?.id ?? "");
  if (!student) throw new Error("no nia");
  return { ...viewer, student };
}
async function change(entries: Readonly<Record<string, string>>): Promise<void> {
  const data = new FormData();
  for (const [name, value] of Object.entries(entries)) data.set(name, value);
  const outcome = await changeClubs(viewer, data);
  expect(outcome).toEqual({ kind: "recorded" });
}
/** What the pages say of each track, whatever its group is called. */
async function said() {
  const { tracks } = await loadStudentVerdicts(nia());
  return tracks.map(({ history, verdict: { id: _, noiseModel: __, ...verdict } }) => ({
    group: history.clubGroup,
    fundamental: history.fundamental.id,
    verdict,
  }));
}

describe("club groups of an academy with sessions", () => {
  it("merged into one, the same sessions are judged as one track under its name; split again, everything is as before", async () => {
    const before = await said();
    const looks = readLookNoise(viewer.db, nia().student);
    expect(new Set(before.map(({ group }) => group))).toEqual(new Set(["iron"]));
    await change({
      change: "merge",
      first: "iron",
      second: "hybrid",
      name: "Irons and hybrids",
      goalsOf: "first",
      why: "one set",
    });
    const merged = await said();
    expect(new Set(merged.map(({ group }) => group))).toEqual(new Set(["iron-irons-and-hybrids"]));
    // No session of hybrids is on file: what is said of the very same sessions is the same.
    expect(merged.map(({ verdict }) => verdict)).toEqual(before.map(({ verdict }) => verdict));
    const fundamental = before[0]?.fundamental ?? "";
    const page = await loadFundamental(nia(), fundamental, undefined);
    expect(page.lede).toContain("Irons and hybrids");
    expect((await loadRoster(viewer, { sort: undefined, page: undefined })).evidence.rows).toHaveLength(1);
    const inGroup = (group: string) =>
      readLookNoise(viewer.db, nia().student).filter((look) => look.clubGroup === group);
    expect(inGroup("iron")).toEqual(looks);
    expect(inGroup("iron-irons-and-hybrids")).toHaveLength(looks.length);
    await change({
      change: "split",
      group: "iron-irons-and-hybrids",
      firstName: "Irons",
      secondName: "Hybrids",
      secondClubs: "2h",
      rest: "first",
      why: "was wrong",
    });
    // One hybrid alone leaves: irons keep the other hybrids, under the irons' goals.
    expect(new Set((await said()).map(({ group }) => group))).toEqual(new Set(["iron-irons"]));
    await change({
      change: "merge",
      first: "iron-irons",
      second: "hybrid-hybrids",
      name: "All",
      goalsOf: "first",
      why: "again",
    });
    expect(new Set((await said()).map(({ group }) => group))).toEqual(new Set(["iron-irons-and-hybrids"]));
    const data = new FormData();
    for (const [name, value] of [
      ["change", "split"],
      ["group", "iron-irons-and-hybrids"],
      ["firstName", "Irons"],
      ["secondName", "Hybrids"],
      ["rest", "first"],
      ["why", "as at first"],
      ...["9h", "8h", "7h", "6h", "5h", "4h", "3h", "2h"].map((club) => ["secondClubs", club] as const),
    ] as const)
      data.append(name, value);
    expect(await changeClubs(viewer, data)).toEqual({ kind: "recorded" });
    expect(await said()).toEqual(before);
  });
});
