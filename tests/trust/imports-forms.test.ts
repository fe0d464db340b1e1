import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { readWorkbook } from "@/lib/ingest/read-workbook";
import { uploadKind } from "@/lib/ingest/upload-kind";
import { codes, planLines, readFile, sayAll } from "../lib/ingest/import-setup";
import { type MadeCell, type MadeSheet, makeWorkbook, STYLE } from "../lib/ingest/made-workbook";
import { countCases } from "./count-cases";

const HEAD = ["student", "date", "club", "swing", "hinge"];
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

async function readBook(sheets: readonly MadeSheet[], answers: Record<string, string> = {}): Promise<ImportPreview> {
  const bytes = makeWorkbook(sheets);
  return readFile(bytes, answers, { workbook: await readWorkbook(bytes) });
}

describe("I12: formulas, errors, hidden sheets", () => {
  const ran = countCases("I12", 8);
  const withCell = (cell: MadeCell) =>
    readBook([
      { name: "S", rows: [HEAD, ["Bea", "2026-03-08", "7-iron", 1, cell], ["Bea", "2026-03-08", "7-iron", 2, 67]] },
    ]);
  it.each([
    ["a number", { raw: "66", formula: "33*2" }, 66],
    ["a text", { raw: "66", kind: "str", formula: '"66"' }, 66],
  ])("a formula that gave %s: its stored value, with a note", async (_, cell, value) => {
    ran.add();
    const preview = await withCell(cell);
    expect(planLines(preview)[0]).toBe(`Bea 2026-03-08 iron/1 swing 1 hinge ${value}`);
    expect(preview.notes).toContainEqual(expect.objectContaining({ code: "formula-value", rows: [2] }));
  });
  it.each(["#DIV/0!", "#N/A", "#REF!", "#VALUE!", "#NAME?", "#NUM!", "#NULL!"])(
    "%s is a problem of its cell",
    async (raw) => {
      ran.add();
      const preview = await withCell({ raw, kind: "e" });
      expect(preview.issues).toMatchObject([{ code: "not-finite", row: 2, column: "hinge", value: raw }]);
      expect(preview.rowsReady).toBe(1);
    },
  );
  it("a formula without a stored value is a problem, not nought", async () => {
    ran.add();
    const preview = await withCell({ xml: '<c r="@"><f>A1*2</f></c>' });
    expect([codes(preview.issues), planLines(preview).length]).toEqual([["formula-without-value"], 1]);
  });
  it.each(["hidden", "veryHidden"] as const)("a %s sheet is named and not read unasked", async (state) => {
    ran.add();
    const rows = [HEAD, ["Bea", "2026-03-08", "7-iron", 1, 66]];
    const preview = await readBook([
      { name: "Seen", rows },
      { name: "Kept away", rows: [["a"], ["b"]], state },
    ]);
    expect(sayAll(preview).join(" ")).toContain("Hidden in the workbook, and read only if you choose it: Kept away.");
    expect(preview.rowsReady).toBe(1);
    const only = await readBook([{ name: "Kept away", rows, state }]);
    expect([only.plan, only.questions[0]?.id]).toEqual([null, "sheet"]);
  });
  it("a number dressed as a date in a column of values is no number", async () => {
    ran.add();
    expect(codes((await withCell({ raw: "46145", style: STYLE.date })).issues)).toEqual(["not-a-number"]);
  });
});

describe("I13: what a file is, by its content", () => {
  const ran = countCases("I13", 10);
  it.each([
    ["a zip as .csv", zipSync({ "a.txt": utf8("x") }), "zip"],
    ["half a zip", zipSync({ "a.txt": utf8("x".repeat(500)) }).slice(0, 60), "zip"],
    ["a gzip", Uint8Array.of(0x1f, 0x8b, 8, 0), "zip"],
    ["a page as .xlsx", utf8("<!DOCTYPE html><table>"), "html"],
    ["a page behind a mark", utf8("\ufeff\n<html>"), "html"],
    ["a table of another kind", utf8('<?xml version="1.0"?><Workbook>'), "html"],
    ["a PNG", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10), "image"],
    ["a JPEG", Uint8Array.of(0xff, 0xd8, 0xff, 0xe0), "image"],
    ["a GIF", utf8("GIF89a"), "image"],
    ["a PDF", utf8("%PDF-1.7"), "pdf"],
    ["an old workbook, or a locked one", Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0), "old-workbook"],
    ["nothing", new Uint8Array(), "empty"],
    ["blank lines", utf8("\r\n \n"), "empty"],
  ])("%s is refused as %s before anything is kept, and in words where it comes another way", (_, bytes, kind) => {
    ran.add();
    expect(uploadKind(bytes)).toBe(kind);
    const preview = readFile(bytes);
    expect([codes(preview.issues)[0], preview.plan]).toEqual([kind === "empty" ? "empty-file" : "not-a-csv", null]);
    expect(sayAll(preview)[0]?.length).toBeGreaterThan(20);
  });
  it("an academy's archive is let in", () => {
    expect(uploadKind(zipSync({ "archive.json": utf8("{}"), "readme.txt": utf8("x") }))).toBe("table");
  });
  it("half a workbook is refused as damaged", async () => {
    ran.add();
    const whole = makeWorkbook([{ name: "S", rows: [HEAD, ["Bea", "2026-03-08", "7-iron", 1, 66]] }]);
    const half = whole.slice(0, whole.length / 2);
    expect(await readWorkbook(half)).toMatchObject({ kind: "refused", why: "broken" });
  });
});
