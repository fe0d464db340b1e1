import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { clearTraces } from "@/app/_server/erase/clear-traces";
import { eraseGroup } from "@/app/_server/erase/erase-group";
import { scopeForJudging, type Viewer } from "@/app/_server/gate";
import { readErasedGroup } from "@/db/read/erased-group";
import { wordsFor } from "@/lib/words/catalogue";
import { startAcademy } from "../app/server/own-academy-data";
import { seededUniform } from "./child";
import { countCases } from "./count-cases";
import { type Planted, plantOthers, plantStudent } from "./planted-student";
import { findBytes, formsOf } from "./search-bytes";

// P2: erase, then search the raw bytes of the data, their journal, uploads, drafts and what was written to the logs.

const SEED = 20261126;
const ERASURES = 20;
const cases = countCases(`P2 erase and search, seed ${SEED}`, ERASURES);

let viewer: Viewer;
let folder: string;
let remove: () => void;
const planted: Planted[] = [];
let said = "";

function wordOf(uniform: () => number): string {
  return Array.from({ length: 14 }, () => String.fromCharCode(97 + Math.floor(uniform() * 26))).join("");
}

beforeAll(async () => {
  ({ viewer, folder, remove } = await startAcademy());
  for (const stream of [process.stdout, process.stderr]) {
    const write = stream.write.bind(stream);
    vi.spyOn(stream, "write").mockImplementation((...args: unknown[]) => {
      said += String(args[0]);
      return (write as (...all: unknown[]) => boolean)(...args);
    });
  }
  const uniform = seededUniform(SEED);
  const others = plantOthers(viewer.db, viewer.academy.id);
  for (let count = 0; count < ERASURES; count++)
    planted.push(plantStudent(viewer.db, viewer.academy.id, wordOf(uniform), others));
  expect(viewer.db.sqlite.pragma("foreign_key_check")).toEqual([]);
});
afterAll(() => {
  vi.restoreAllMocks();
  remove();
});

it("P2: of an erased student nothing is found, in any table, file, journal or log, and the others are whole", () => {
  const { db, scope } = viewer;
  for (const [place, { word, ids, studentId, alias }] of planted.entries()) {
    const needles = [word, alias, ...ids];
    // Found before, or that nothing is found after would prove nothing.
    expect(findBytes(folder, [word, studentId]).length).toBeGreaterThan(0);
    const group = readErasedGroup(db, scopeForJudging(db, scope, studentId));
    const erased = eraseGroup(db, group, { who: "Director", reason: "asked", words: wordsFor("en") });
    expect(erased?.rows).toMatchObject({ student: 2, session: 1, reading: 1 });
    // Every workbook goes with the first one who is erased.
    expect(erased?.elsewhere.files).toBe(place === 0 ? 3 + ERASURES : 3);
    expect(clearTraces(db)).toBe("cleared");
    expect(findBytes(folder, needles)).toEqual([]);
    expect(needles.flatMap(formsOf).filter((bytes) => Buffer.from(said).includes(bytes))).toEqual([]);
    const next = planted[place + 1];
    if (next) expect(findBytes(folder, [next.word]).length).toBeGreaterThan(0);
    cases.add();
  }
  expect(db.sqlite.pragma("foreign_key_check")).toEqual([]);
  expect(db.sqlite.prepare("SELECT id FROM student").pluck().all()).toEqual(["o"]);
  const rows = db.sqlite.prepare<[], Record<string, unknown>>("SELECT * FROM erasure").all();
  expect(rows.length).toBe(ERASURES);
  for (const row of rows) expect(row).toMatchObject({ who: "Director", reason: "asked", sessions: 1, readings: 1 });
  const seen = db.sqlite.prepare("SELECT DISTINCT body FROM seen").pluck().all();
  expect(seen).toEqual(['["o/hinge/iron"]']);
});
