import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ImportLog } from "@/lib/ingest/import-log";
import type { ImportInput } from "@/lib/ingest/import-preview";
import { parseValue } from "@/lib/ingest/parse-value";
import { readTable } from "@/lib/ingest/read-table";
import { type ReadWorkbook, readWorkbook } from "@/lib/ingest/read-workbook";
import { codes, readFile, sayAll, silentRows } from "../lib/ingest/import-setup";
import { type MadeCell, makeWorkbook, STYLE, sheetXml, workbookParts, zipParts } from "../lib/ingest/made-workbook";
import { countCases } from "./count-cases";

const SEED = 20_261_126;
const ran = countCases(`hostile files (seed ${SEED})`, 10_000);

/** Whether what is written has a figure other than nought in front of a power of ten. */
const isNought = (typed: string): boolean => /[0oO０]/.test(typed) && !/[1-9]/.test(typed.replace(/[eE].*$/, ""));

/** Holds a file's preview against what must be true of any file. */
function checkFile(content: string | Uint8Array, workbook: ReadWorkbook | null = null): number {
  ran.add();
  const preview = readFile(content, {}, { workbook });
  expect(silentRows(preview)).toEqual([]);
  expect(preview.rowsReady + preview.restRows.length).toBe(preview.rowsTotal);
  expect(preview.waitingRows.every((row) => preview.restRows.includes(row))).toBe(true);
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  const table = readTable({ bytes, workbook, answers: new Map() } as unknown as ImportInput, new ImportLog(new Map()));
  const cells = new Set(table?.records.flatMap((record) => record.cells));
  const changed = new Set(codes(preview.notes));
  for (const { session } of preview.plan?.sessions ?? []) {
    for (const { readings } of session.swings) {
      for (const { value, typed } of readings) {
        // Every stored value is the plain meaning of a cell of the file; nobody answered anything, so nothing is turned.
        expect(cells.has(typed)).toBe(true);
        const parsed = parseValue(typed);
        if (parsed.kind === "number") expect(value).toBe(parsed.value);
        else if (parsed.kind === "either")
          expect([value, changed.has("decimal-comma")]).toEqual([parsed.decimal, true]);
        else expect([parsed.kind, value]).toEqual(["not-measurable", null]);
        if (value === 0) expect(isNought(typed)).toBe(true);
        expect(typed).not.toContain("\ufffd");
      }
    }
  }
  sayAll(preview);
  return preview.rowsReady;
}

const HEAD = ["student", "date", "club", "swing", "hinge", "hip-sway", "note"];
const ROWS = Array.from({ length: 8 }, (_, at) => [
  at % 3 === 0 ? "Leo" : "Bea",
  `2026-03-0${1 + (at % 4)}`,
  at % 2 === 0 ? "7-iron" : "driver",
  String(at + 1),
  String(60 + at),
  (at - 3.5).toFixed(1),
  at === 2 ? 'thin, "twice"' : "",
]);
const quoted = (cell: string): string => (/[",\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
const CSV = new TextEncoder().encode(`${[HEAD, ...ROWS].map((row) => row.map(quoted).join(",")).join("\r\n")}\r\n`);
const JSON_TEXT = `[${ROWS.map((row) => JSON.stringify(Object.fromEntries(row.map((cell, at) => [HEAD[at] ?? "", /^-?[\d.]+$/.test(cell) ? Number(cell) : cell])))).join(",\n")}]`;
const BOOK = makeWorkbook([
  {
    name: "S",
    rows: [
      HEAD,
      ...ROWS.map((row, at): MadeCell[] =>
        row.map((cell, place) =>
          place === 1 ? { raw: String(46_082 + at), style: STYLE.date } : /^-?[\d.]+$/.test(cell) ? Number(cell) : cell,
        ),
      ),
    ],
  },
]);

/** A change of bytes: one turned, a stretch cut out, doubled, or strewn with others. */
const change = fc.record({
  // Of whole numbers: doubles crowd at nought, and every file would be broken in its first bytes.
  at: fc.nat(9999).map((place) => place / 10_000),
  length: fc.integer({ min: 1, max: 40 }),
  kind: fc.constantFrom("turn", "cut", "double", "insert"),
  bytes: fc.oneof(
    fc.uint8Array({ minLength: 1, maxLength: 6 }),
    fc
      .constantFrom('"', ",", "\r", "\n", ";", "\t", "0", "\u202e", "−", "\u0000", "e", "}", "]", "\\", "[{")
      .map((text) => new TextEncoder().encode(text)),
  ),
});
type Change = typeof change extends fc.Arbitrary<infer T> ? T : never;

function mutate(file: Uint8Array, changes: readonly Change[]): Uint8Array {
  let bytes = Buffer.from(file);
  for (const { at, length, kind, bytes: others } of changes) {
    const place = Math.floor(at * bytes.length);
    const [head, middle, tail] = [
      bytes.subarray(0, place),
      bytes.subarray(place, place + length),
      bytes.subarray(place + length),
    ];
    if (kind === "turn") bytes = Buffer.concat([head, others, bytes.subarray(place + others.length)]);
    else if (kind === "cut") bytes = Buffer.concat([head, tail]);
    else if (kind === "double") bytes = Buffer.concat([head, middle, middle, tail]);
    else bytes = Buffer.concat([head, others, middle, tail]);
  }
  return new Uint8Array(bytes);
}

const changes = fc.array(change, { minLength: 1, maxLength: 5 });
const settings = (numRuns: number) => ({ seed: SEED, numRuns });

describe("hostile files", () => {
  it("the untouched ones are read whole", async () => {
    expect([checkFile(CSV), checkFile(JSON_TEXT), checkFile(BOOK, await readWorkbook(BOOK))]).toEqual([8, 8, 8]);
  });

  it("5,000 CSV files with bytes changed: nothing thrown, nothing altered, no row unsaid", () => {
    let brought = 0;
    fc.assert(
      fc.property(changes, (list) => {
        if (checkFile(mutate(CSV, list)) > 0) brought++;
      }),
      settings(5000),
    );
    // Else the files were broken beyond what they are meant to test.
    expect(brought).toBeGreaterThan(2000);
  });

  it("2,500 JSON files with bytes changed", () => {
    const file = new TextEncoder().encode(JSON_TEXT);
    fc.assert(
      fc.property(changes, (list) => void checkFile(mutate(file, list))),
      settings(2500),
    );
  });

  it("500 files of bytes out of nowhere", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => void checkFile(bytes)),
      settings(500),
    );
  });

  it("500 JSON texts of any values", () => {
    const value = fc.array(fc.dictionary(fc.constantFrom(...HEAD, "__proto__", "x"), fc.jsonValue(), { maxKeys: 8 }));
    fc.assert(
      fc.property(value, (rows) => void checkFile(JSON.stringify(rows))),
      settings(500),
    );
  });

  it("1,000 workbooks with bytes changed: refused in words, or read as they were", async () => {
    await fc.assert(
      fc.asyncProperty(changes, async (list) => {
        const bytes = mutate(BOOK, list);
        checkFile(bytes, await readWorkbook(bytes));
      }),
      settings(1000),
    );
  });

  it("700 workbooks whose sheet was changed before it was packed", async () => {
    const parts = workbookParts([{ name: "S", rows: [HEAD, ...ROWS] }]);
    const sheet = new TextEncoder().encode(sheetXml([HEAD, ...ROWS]));
    await fc.assert(
      fc.asyncProperty(changes, async (list) => {
        const xml = new TextDecoder().decode(mutate(sheet, list));
        const bytes = zipParts({ ...parts, "xl/worksheets/sheet1.xml": xml });
        checkFile(bytes, await readWorkbook(bytes));
      }),
      settings(700),
    );
  });
});
