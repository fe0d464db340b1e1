import { readFileSync } from "node:fs";
import path from "node:path";
import { strFromU8, unzipSync } from "fflate";
import Papa from "papaparse";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildArchivePage } from "@/app/_server/archive/archive-page";
import { loadArchive } from "@/app/_server/archive/load-archive";
import { loadReport } from "@/app/_server/archive/load-report";
import { loadTakeOut } from "@/app/_server/archive/load-take-out";
import { packArchive } from "@/app/_server/archive/pack-archive";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import type { ImportDraft } from "@/app/_server/import/import-desk";
import { confirmImport } from "@/app/_server/import/write-import";
import { loadEvents } from "@/app/_server/season/load-events";
import { loadFundamental } from "@/app/_server/season/load-fundamental";
import { loadSeason } from "@/app/_server/season/load-season";
import { digestTables } from "@/db/digest";
import { readStudents } from "@/db/read/students";
import { insertEvent } from "@/db/write/events";
import type { Archive } from "@/lib/domain/archive";
import { sayColumn } from "@/lib/report/archive-readme";
import type { TableModel } from "@/lib/report/basic-model";
import { startAcademy } from "./own-academy-data";

const SAMPLES = path.join(import.meta.dirname, "../../../seed/samples");
let viewer: Viewer;
let remove: () => void;

const upload = (fileName: string, bytes: Uint8Array | string, answers: ImportDraft["answers"] = []): ImportDraft => ({
  fileName,
  file: Buffer.from(bytes).toString("base64"),
  answers,
});

function viewerOf(alias: string): StudentViewer {
  const id = readStudents(viewer.db, viewer.scope).find((student) => student.alias === alias)?.id ?? "";
  const student = admitToStudent(viewer, id);
  if (!student) throw new Error(`no ${alias}`);
  return { ...viewer, student };
}

async function zipOf(alias: string): Promise<Uint8Array> {
  const own = viewerOf(alias);
  return packArchive(own, await loadArchive(own, own.student));
}

const csvOf = (bytes: Uint8Array) =>
  Papa.parse<string[]>(strFromU8(bytes).replace(/^\uFEFF/, ""), { delimiter: ",", skipEmptyLines: true }).data;

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  for (const [alias, name, hand] of [
    ["nia", "season-long.csv", "new-right"],
    ["tove", "season-wide.csv", "new-left"],
  ] as const) {
    const answers = [
      [`answer:student:${alias}`, hand],
      [`answer-givenBy:student:${alias}`, `mother of ${alias}`],
    ] as const;
    const made = await confirmImport(viewer, upload(name, readFileSync(path.join(SAMPLES, name)), answers));
    if (made.kind !== "imported") throw new Error(made.kind);
  }
  const note = "=planted zebra";
  insertEvent(viewer.db, viewerOf("Nia").student, {
    id: "e1",
    kind: "growth",
    day: "2026-04-01",
    note,
    rebaselines: [],
  });
  const [first] = viewer.db.sqlite.prepare<[], string>("SELECT id FROM session ORDER BY day").pluck().all();
  viewer.db.sqlite.prepare("UPDATE session SET note = '@planted heron' WHERE id = ?").run(first ?? "");
  viewer.db.sqlite.prepare("UPDATE student SET revision = revision + 1").run();
}, 120_000);
afterAll(() => remove());

describe("one student's archive", () => {
  it("P1: holds what was planted about the student, and no word about another one", async () => {
    const files = unzipSync(await zipOf("Nia"));
    const text = Object.values(files)
      .map((bytes) => strFromU8(bytes))
      .join("\n");
    for (const word of ["planted zebra", "planted heron", "mother of nia", "Nia"]) expect(text).toContain(word);
    for (const word of ["Tove", "mother of tove", viewerOf("Tove").student.studentId]) expect(text).not.toContain(word);
  });

  it("where it hurts goes to the family with everything else, and stands in no table, on no page's file and on no report", async () => {
    const own = viewerOf("Nia");
    insertEvent(own.db, own.student, {
      ...{ id: "e2", kind: "injury", day: "2026-04-02", place: "elbow", note: "", rebaselines: [] },
    });
    const files = unzipSync(await zipOf("Nia"));
    const { archive } = await loadArchive(own, own.student);
    expect(archive.students[0]?.events.find((event) => event.kind === "injury")?.place).toBe("elbow");
    expect(strFromU8(files["archive.json"] as Uint8Array)).toMatch(/"place":\s*"elbow"/);
    for (const [name, bytes] of Object.entries(files).filter(([each]) => each.endsWith(".csv")))
      expect(strFromU8(bytes), name).not.toContain("elbow");
    for (const model of [
      loadEvents(own, "left-out"),
      await loadReport(own, undefined),
      await loadSeason(own, undefined),
    ])
      expect(JSON.stringify(model)).not.toContain("elbow");
    expect(JSON.stringify(loadEvents(own))).toContain("elbow");
    // Said where the family takes it, and in the archive itself.
    expect(JSON.stringify(await loadTakeOut(own))).toContain(viewer.words.say("take-out.care.names"));
    expect(strFromU8(files["README.txt"] as Uint8Array)).toContain(viewer.words.say("archive.readme.left-out.pain"));
    own.db.sqlite.prepare("DELETE FROM event WHERE id = 'e2'").run();
  });

  it("names no file after a person, and guards what looks like a formula", async () => {
    const files = unzipSync(await zipOf("Nia"));
    expect(Object.keys(files)).toEqual(
      expect.arrayContaining(["README.txt", "archive.json", "sessions.csv", "looks.csv"]),
    );
    for (const name of Object.keys(files)) expect(name).toMatch(/^(README\.txt|archive\.json|[a-z-]+\.csv)$/);
    expect(csvOf(files["events.csv"] as Uint8Array)[1]).toContain("'=planted zebra");
  });

  it("says in the readme what every column of every table is, and counts its rows", async () => {
    const files = unzipSync(await zipOf("Nia"));
    const readme = strFromU8(files["README.txt"] as Uint8Array);
    for (const [name, bytes] of Object.entries(files).filter(([each]) => each.endsWith(".csv"))) {
      const [head = [], ...rows] = csvOf(bytes);
      expect(readme).toContain(`# ${name}`);
      for (const column of head) {
        const said = sayColumn(viewer.words, name.replace(".csv", ""), column);
        expect(readme).toContain(`- ${column}: ${said}`);
      }
      if (rows.length > 1) expect(readme).toContain(`(${rows.length} rows)`);
    }
    expect(csvOf(files["readings.csv"] as Uint8Array)).toHaveLength(1 + 90);
  });

  it("is the same bytes each time", async () => {
    expect(Buffer.from(await zipOf("Nia")).equals(Buffer.from(await zipOf("Nia")))).toBe(true);
  });

  it("a page says what is in it and leads to each table", async () => {
    const page = await loadTakeOut(viewerOf("Nia"));
    const hrefs = page.parts.flatMap((part) => part.links.map((link) => link.href));
    const tables = Object.keys(unzipSync(await zipOf("Nia"))).filter((name) => name.endsWith(".csv"));
    for (const name of tables)
      expect(hrefs.filter((href) => href.endsWith(`?table=${name.replace(".csv", "")}`))).toHaveLength(1);
    expect(JSON.stringify(page)).toContain("90 readings");
  });
});

describe("an archive into an academy that has students", () => {
  it("the very student on file is refused in words, and nothing is written", async () => {
    const before = await digestTables(viewer.db);
    const draft = upload("x.zip", await zipOf("Nia"));
    const page = await buildArchivePage(viewer, "d", draft);
    expect(page?.submit).toBeNull();
    expect(page?.lists[0]?.items.join()).toContain("Nia is on file here already");
    expect(await confirmImport(viewer, draft)).toEqual({ kind: "nothing-ready" });
    expect(await digestTables(viewer.db)).toEqual(before);
  });

  it("another student of a taken alias waits for another alias, then is judged like the first", async () => {
    const own = viewerOf("Nia");
    const { archive } = await loadArchive(own, own.student);
    const text = JSON.stringify(archive).replaceAll(own.student.studentId, "another-nia");
    const asked = await buildArchivePage(viewer, "d", upload("x.json", text));
    expect(asked?.asked?.fields.map((field) => field.name)).toEqual(["answer-alias:another-nia"]);
    const made = await confirmImport(viewer, upload("x.json", text, [["answer-alias:another-nia", "Nia 2"]]));
    expect(made).toMatchObject({ kind: "imported", students: 1, readings: 90 });
    const [first, second] = [await loadArchive(own, own.student), await loadArchive(viewer, viewerOf("Nia 2").student)];
    const said = ({ archive: { students } }: { readonly archive: Archive }) =>
      students[0]?.snapshots.map(({ body }) => (JSON.parse(body) as { verdict: { verdict: string } }).verdict.verdict);
    expect(said(second)).toEqual(said(first));
    // Sessions had their ids taken: here they have ids of their own.
    const ids = new Set(first.archive.students[0]?.sessions.map(({ id }) => id));
    for (const { id } of second.archive.students[0]?.sessions ?? []) expect(ids.has(id)).toBe(false);
  }, 120_000);

  it.each([
    ["half of one", "Nothing was saved", (bytes: Uint8Array) => bytes.subarray(0, bytes.length / 2)],
    [
      "one of another version",
      "version 9",
      (bytes: Uint8Array) =>
        Buffer.from(strFromU8(unzipSync(bytes)["archive.json"] as Uint8Array).replace('"version": 1', '"version": 9')),
    ],
  ])("%s is named and nothing is written", async (_what, says, spoil) => {
    const draft = upload("x.zip", spoil(await zipOf("Tove")));
    const page = await buildArchivePage(viewer, "d", draft);
    expect(page?.lists.flatMap((list) => list.items).join() ?? "").toContain(says);
    const before = await digestTables(viewer.db);
    expect(await confirmImport(viewer, draft)).toEqual({ kind: "nothing-ready" });
    expect(await digestTables(viewer.db)).toEqual(before);
  });
});

describe("the report", () => {
  it("every figure is the field of the season's or the fundamental's page", async () => {
    const own = viewerOf("Nia");
    const [report, season] = [await loadReport(own, undefined), await loadSeason(own, undefined)];
    expect(report.next).toEqual(season.next);
    expect(report.proved).toEqual(season.proved);
    // The tables are the season's; their files are numbered on the report.
    const withoutFile = (table: TableModel | undefined) => ({ ...table, download: null });
    expect(withoutFile(report.settle?.table)).toEqual(withoutFile(season.settle?.table));
    for (const [place, table] of report.events.tables.entries())
      expect(table.download?.href, String(place)).toMatch(/^\/api\/tables\?of=report&/);
    expect(report.cautions.texts).toEqual(season.cautions);
    expect(report.fundamentals.items.length).toBeGreaterThan(0);
    for (const item of report.fundamentals.items) {
      const page = await loadFundamental(own, item.id, undefined);
      expect(item).toMatchObject({
        position: page.verdict.position,
        glyph: page.verdict.glyph,
        heading: page.verdict.heading,
        facts: page.verdict.facts,
        // Practice, events and other fundamentals' drills stand once for all, on the first sheet.
        chart: { ...page.evidence.chart, practice: null, events: [], drills: [] },
      });
    }
    const rows = season.evidence.groups.flatMap((group) => group.rows);
    expect(report.glance?.table.rows.map(({ cells: [name, word] }) => [name, word])).toEqual(
      rows.map((row) => [row.name, row.word]),
    );
    expect(report.glance?.axis.events).toEqual(season.evidence.events);
    expect(report.counts).toContain("9 sessions with 45 swings");
  });
});
