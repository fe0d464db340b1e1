import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { manyCases } from "../../many-cases";
import { codes, planLines, readFile, sayAll, silentRows } from "./import-setup";

const HEADER = ["student", "date", "club", "swing", "hinge", "hip sway", "setup-tilt", "note"];

/** A good file: sessions of Bea with five swings each, one row a swing. */
const GOOD: readonly (readonly string[])[] = Array.from({ length: 20 }, (_, at) => [
  "Bea",
  `2026-0${1 + Math.floor(at / 5)}-1${at % 5}`,
  "7-iron",
  String((at % 5) + 1),
  String(60 + at),
  String((at % 7) - 2),
  String(3 + (at % 6)),
  at % 4 === 0 ? "thin, twice" : "",
]);

const quoted = (cell: string): string => (/[",\n;|\t]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
const toFile = (rows: readonly (readonly string[])[]): string =>
  `${[HEADER, ...rows].map((row) => row.map(quoted).join(",")).join("\n")}\n`;

const NASTY = [
  "",
  " ",
  "-",
  "n/m",
  "NaN",
  "Infinity",
  "1e400",
  "1e-400",
  "0x10",
  "12°",
  "−3",
  "１２",
  "-0",
  "8o",
  "9 cm",
  "1,234",
  "1.234",
  "12,5",
  "03/04/2026",
  "25/03/2026",
  "2026-02-30",
  "2036-01-01",
  "46089",
  "Beah",
  "Leo",
  "Uma",
  "\u202eaeB",
  "Be\u0301a",
  "🏌️‍♂️",
  "\u0000",
  '"',
  '""',
  "'",
  "=1+1",
  "__proto__",
  "constructor",
  "null",
  "a\nb",
  "a\nb,c,d,e,f,g,h,i",
  "x".repeat(25_000),
  "driver",
  "stick",
  "±2",
  ";",
  "\t",
];

const cell = fc.oneof(fc.constantFrom(...NASTY), fc.string({ unit: "binary", maxLength: 12 }), fc.double().map(String));

function checkWhole(preview: ReturnType<typeof readFile>): void {
  expect(silentRows(preview)).toEqual([]);
  expect(preview.rowsReady + preview.restRows.length).toBe(preview.rowsTotal);
  expect(new Set(preview.restRows).size).toBe(preview.restRows.length);
  for (const { session } of preview.plan?.sessions ?? []) {
    for (const { readings } of session.swings) {
      for (const { value, typed } of readings) {
        expect(typed.trim()).not.toBe("");
        if (value === 0) expect(typed).toMatch(/[0oO]/);
        expect(value === null || Number.isFinite(value)).toBe(true);
      }
    }
  }
  sayAll(preview);
}

describe("hostile files (fixed seeds)", () => {
  it(`${manyCases(1200)} files with up to six cells changed: nothing thrown, no row lost unsaid, untouched rows whole`, () => {
    const change = fc.record({ row: fc.nat(GOOD.length - 1), at: fc.nat(HEADER.length - 1), cell });
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
        const rows = GOOD.map((row) => [...row]);
        for (const { row, at, cell: text } of changes) (rows[row] as string[])[at] = text;
        const preview = readFile(toFile(rows));
        checkWhole(preview);
        const touched = new Set(changes.map(({ row }) => row + 2));
        const asked = new Set([...preview.issues, ...preview.questions].flatMap((entry) => entry.rows));
        const waits = new Set(
          preview.notes
            .filter(({ code }) => code === "duplicate-row" || code === "waits-for-unit")
            .flatMap((entry) => entry.rows),
        );
        const saved = new Set(
          (preview.plan?.sessions ?? []).flatMap(({ session }) =>
            session.swings.map(
              (swing) => `${session.day} ${swing.number} ${swing.readings.map(({ typed }) => typed).join(" ")}`,
            ),
          ),
        );
        GOOD.forEach(([, day, , swing, ...values], at) => {
          const row = at + 2;
          if (touched.has(row) || asked.has(row) || waits.has(row)) return;
          const whole = [...saved].some(
            (line) => line.startsWith(`${day} ${swing} `) && values.slice(0, 3).every((value) => line.includes(value)),
          );
          expect(whole ? "" : `row ${row} lost`).toBe("");
        });
      }),
      { numRuns: manyCases(1200), seed: 20260308 },
    );
  });

  it(`${manyCases(500)} files with bytes changed, cut or doubled anywhere`, () => {
    const bytes = new TextEncoder().encode(toFile(GOOD));
    const edit = fc.record({
      kind: fc.constantFrom("put", "cut", "double"),
      at: fc.nat(bytes.length - 1),
      length: fc.integer({ min: 1, max: 40 }),
      byte: fc.oneof(fc.nat(255), fc.constantFrom(0, 10, 13, 34, 44, 59, 0xff, 0xfe)),
    });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => {
        let file = [...bytes];
        for (const { kind, at, length, byte } of edits) {
          if (kind === "put") file[at % file.length] = byte;
          else if (kind === "cut") file = [...file.slice(0, at), ...file.slice(at + length)];
          else file = [...file.slice(0, at), ...file.slice(at, at + length), ...file.slice(at)];
        }
        checkWhole(readFile(Uint8Array.from(file)));
      }),
      { numRuns: manyCases(500), seed: 20260309 },
    );
  });

  it(`${manyCases(300)} files of nothing but chance, under a good header or none`, () => {
    const header = `${HEADER.join(",")}\n`;
    fc.assert(
      fc.property(fc.boolean(), fc.string({ unit: "binary", maxLength: 300 }), (headed, text) =>
        checkWhole(readFile(headed ? header + text : text)),
      ),
      { numRuns: manyCases(300), seed: 20260310 },
    );
  });

  it("every answer to every question leads to a whole preview again", () => {
    const bad = toFile([
      ...GOOD.slice(0, 10),
      ["Beah", "03/04/2026", "stick", "1", "8o", "9 cm", "1,234", ""],
      ["Uma", "46089", "", "1", "500", "4", "4", ""],
      ["Leo", "2026-03-08", "7-iron", "1", "1.2", "4", "-9", ""],
      ["Bea", "2026-01-10", "7-iron", "1", "99", "4", "4", ""],
    ]);
    const questions = readFile(bad).questions;
    expect(codes(questions).length).toBeGreaterThan(8);
    const answers = fc.record(
      Object.fromEntries(
        questions.map(({ id, options }) => [`answer:${id}`, fc.constantFrom("", ...options.map((each) => each.id))]),
      ),
    );
    const fields = Object.fromEntries(
      questions.flatMap(({ options }) => options.flatMap((each) => each.fields.map(({ name }) => [name, "45"]))),
    );
    fc.assert(
      fc.property(answers, fc.boolean(), (chosen, filled) =>
        checkWhole(readFile(bad, filled ? { ...fields, ...chosen } : chosen)),
      ),
      { numRuns: 200, seed: 20260311 },
    );
  });
});

describe("long and wide", () => {
  it("100 seasons written in both forms make the same sessions", () => {
    const value = fc.oneof(
      fc.constant(""),
      fc.constant("n/m"),
      fc.integer({ min: 20, max: 50 }).map(String),
      fc.constant("33,5"),
    );
    const row = fc.record({ day: fc.integer({ min: 10, max: 28 }), hinge: value, sway: value, tilt: value });
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 25 }), (rows) => {
        const swings = rows.map(({ day, hinge, sway, tilt }, at) => [
          "Bea",
          `2026-06-${day}`,
          "7-iron",
          String(at + 1),
          hinge,
          sway,
          tilt,
        ]);
        const wide = ["student;date;club;swing;hinge;hip sway;setup tilt", ...swings.map((cells) => cells.join(";"))];
        const long = [
          "student;date;club;swing;fundamental;value",
          ...swings.flatMap(([alias, day, club, swing, ...values]) =>
            ["hinge", "hip-sway", "setup-tilt"].map((id, at) => [alias, day, club, swing, id, values[at]].join(";")),
          ),
        ];
        const [fromWide, fromLong] = [readFile(wide.join("\n")), readFile(long.join("\n"))];
        expect(planLines(fromLong)).toEqual(planLines(fromWide));
        checkWhole(fromLong);
      }),
      { numRuns: 100, seed: 20260312 },
    );
  });
});
