import { spawnSync } from "node:child_process";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadArchive } from "@/app/_server/archive/load-archive";
import { admitMachine, admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import type { ImportDraft } from "@/app/_server/import/import-desk";
import { confirmImport } from "@/app/_server/import/write-import";
import { loadFundamental } from "@/app/_server/season/load-fundamental";
import { loadSeason } from "@/app/_server/season/load-season";
import { openDatabase } from "@/db/client";
import { readTableNames } from "@/db/digest";
import { readImportBatches } from "@/db/read/import-batches";
import { readStudents } from "@/db/read/students";
import { readTrackKeys } from "@/db/read/tracks";
import { archiveText } from "@/lib/domain/archive";
import { builtScript } from "../../built-script";
import { startAcademy } from "./own-academy-data";

/** With every student of the demo by `PROOFBAND_ROUND_TRIP=all`; its last result stands in DEVELOPERS.md. */
const STUDENTS = process.env.PROOFBAND_ROUND_TRIP === "all" ? 60 : 12;
const ROOT = path.join(import.meta.dirname, "../../..");
let own: Viewer;
let demo: Viewer;
let remove: () => void;

const draftOf = (text: string): ImportDraft => ({
  fileName: "archive.json",
  file: Buffer.from(text).toString("base64"),
  answers: [],
});

beforeAll(async () => {
  const started = await startAcademy();
  remove = started.remove;
  const env = { ...process.env, PROOFBAND_DATA: started.folder };
  const seeded = spawnSync(process.execPath, [builtScript("seed/demo.ts")], { cwd: ROOT, env, encoding: "utf8" });
  if (seeded.status !== 0) throw new Error(seeded.stderr);
  thinOut(started.folder);
  // The same today and zone on both sides: a page also says how long ago something was.
  started.viewer.db.sqlite
    .prepare("UPDATE academy SET fixed_today = ?, owner_name = ?, zone = ?, name = ?")
    .run("2026-09-12", "Coach Wren", "Europe/Berlin", demoName(started.folder));
  const viewers = [
    await admitMachine({ choice: "demo", locale: null }),
    await admitMachine({ choice: "own", locale: null }),
  ];
  if (!viewers[0] || !viewers[1]) throw new Error("no academy");
  [demo, own] = [viewers[0], viewers[1]];
}, 120_000);
afterAll(() => remove());

/** An archive says whose it is. */
function demoName(folder: string): string {
  const db = openDatabase(path.join(folder, "demo", "proofband.db"), "read");
  const name = db.sqlite.prepare<[], string>("SELECT name FROM academy").pluck().get() ?? "";
  db.close();
  return name;
}

/** Tables of what an academy holds, and what of them counts: numbers of rows, imports and revisions are each file's own. */
const OWN_NUMBERS = ["batch_id", "academy_id", "revision"];
const NOT_TAKEN = ["academy", "analysis", "draft", "import_batch", "roster_list", "seen", "__drizzle_migrations"];

function columnsOf({ db }: Viewer, table: string): string[] {
  return db.sqlite
    .prepare<[string], string>("SELECT name FROM pragma_table_info(?)")
    .pluck()
    .all(table)
    .filter((name) => !OWN_NUMBERS.includes(name));
}

/** Ids that SQLite counts stand for what they name. */
const NAMED: Readonly<Record<string, string>> = {
  swing_id: "(SELECT session_id || ' ' || number FROM swing WHERE swing.id = row.swing_id) AS swing_id",
  reading_id:
    "(SELECT swing.session_id || ' ' || swing.number || ' ' || fundamental_id || ' ' || reading.reader || ' ' || reread FROM reading JOIN swing ON swing.id = reading.swing_id WHERE reading.id = row.reading_id) AS reading_id",
};
const COUNTED = ["swing", "reading", "correction", "asking", "note_coding", "record_change", "rebaseline_change"];
const DRAWN = "(SELECT id FROM reread_draw WHERE finished_on IS NOT NULL)";
const OVER = "(finished_at IS NOT NULL OR dropped_at IS NOT NULL)";
const CLOSED: Readonly<Record<string, string>> = {
  reread_draw: "finished_on IS NOT NULL",
  read_back: OVER,
  read_back_item: `read_back_id IN (SELECT id FROM read_back WHERE ${OVER})`,
  reread_item: `draw_id IN ${DRAWN}`,
  reading: `reread = 0 OR id IN (SELECT reading_id FROM reread_item WHERE draw_id IN ${DRAWN})`,
};

function rowsOf(viewer: Viewer, table: string): string[] {
  const columns = columnsOf(viewer, table)
    .filter((name) => !(COUNTED.includes(table) && name === "id"))
    .map((name) => NAMED[name] ?? `"${name}"`);
  return viewer.db.sqlite
    .prepare<[], unknown[]>(`SELECT ${columns.join(", ")} FROM "${table}" AS row WHERE ${CLOSED[table] ?? "1"}`)
    .raw()
    .all()
    .map((row) => JSON.stringify(row))
    .sort();
}

/** The first students of the demo, whose stories are told, and some quiet ones; the others go. */
function thinOut(folder: string): void {
  const db = openDatabase(path.join(folder, "demo", "proofband.db"));
  db.sqlite.prepare("DELETE FROM student WHERE id NOT IN (SELECT id FROM student ORDER BY id LIMIT ?)").run(STUDENTS);
  db.close();
}

/** A viewer of one student, as a page's request has it. */
async function viewerOf(choice: "demo" | "own", alias: string): Promise<StudentViewer> {
  const viewer = await admitMachine({ choice, locale: null });
  const id = viewer && readStudents(viewer.db, viewer.scope).find((student) => student.alias === alias)?.id;
  const student = viewer && admitToStudent(viewer, id ?? "");
  if (!viewer || !student) throw new Error(`no ${alias}`);
  return { ...viewer, student };
}

describe("the demo academy as an archive, imported into an empty academy", () => {
  let text: string;

  it("takes in its students in one import by the archive's door, and the same again adds nothing", async () => {
    text = archiveText((await loadArchive(demo, "everybody")).archive);
    const outcome = await confirmImport(own, draftOf(text));
    const count = (table: string) => demo.db.sqlite.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get();
    expect(outcome).toMatchObject({
      kind: "imported",
      students: STUDENTS,
      sessions: count("session"),
      swings: count("swing"),
    });
    expect(readImportBatches(own.db, own.scope)).toMatchObject([{ door: "archive", undoneAt: null }]);
    expect(await confirmImport(own, draftOf(text))).toMatchObject({ kind: "already-imported" });
  }, 240_000);

  it("every table that counts holds the same rows", () => {
    const tables = readTableNames(demo.db.sqlite).filter((table) => !NOT_TAKEN.includes(table));
    expect(tables).toContain("reading");
    const filled = tables.filter((table) => rowsOf(demo, table).length > 0);
    expect(filled.length).toBeGreaterThan(15);
    for (const table of tables)
      expect({ table, rows: rowsOf(own, table) }).toEqual({ table, rows: rowsOf(demo, table) });
  });

  it("out again, it is the same archive byte for byte", async () => {
    const viewer = await admitMachine({ choice: "own", locale: null });
    if (!viewer) throw new Error("no own academy");
    const again = archiveText((await loadArchive(viewer, "everybody")).archive);
    expect(again.length).toBe(text.length);
    expect(again === text).toBe(true);
  }, 240_000);

  it("the season and every fundamental of ten students are the very same pages", async () => {
    const aliases = readStudents(demo.db, demo.scope)
      .filter((_, at) => at % Math.floor(STUDENTS / 10) === 0)
      .slice(0, 10)
      .map((student) => student.alias);
    expect(aliases).toHaveLength(10);
    let pages = 0;
    for (const alias of aliases) {
      const [theirs, ours] = [await viewerOf("demo", alias), await viewerOf("own", alias)];
      expect(await loadSeason(ours, undefined)).toEqual(await loadSeason(theirs, undefined));
      for (const { fundamentalId, clubGroup } of readTrackKeys(theirs.db, theirs.student)) {
        expect(await loadFundamental(ours, fundamentalId, clubGroup)).toEqual(
          await loadFundamental(theirs, fundamentalId, clubGroup),
        );
        pages += 1;
      }
    }
    expect(pages).toBeGreaterThan(50);
  }, 240_000);
});
