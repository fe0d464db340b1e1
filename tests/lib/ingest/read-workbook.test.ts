import { describe, expect, it } from "vitest";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { readWorkbook } from "@/lib/ingest/read-workbook";
import { codes, planLines, readFile, sayAll } from "./import-setup";
import { type MadeSheet, makeWorkbook, STYLE, sheetXml, workbookParts, zipParts } from "./made-workbook";

const HEAD = ["student", "date", "club", "swing", "hinge"];
const row = (swing: number, value: MadeSheet["rows"][number][number], day = "46089") =>
  ["Bea", { raw: day, style: STYLE.date }, "7-iron", swing, value] as const;

async function readBook(bytes: Uint8Array, answers: Record<string, string> = {}): Promise<ImportPreview> {
  return readFile(bytes, answers, { workbook: await readWorkbook(bytes) });
}
const oneSheet = (...rows: MadeSheet["rows"]) => makeWorkbook([{ name: "Season", rows: [HEAD, ...rows] }]);
const typed = (preview: ImportPreview) =>
  (preview.plan?.sessions ?? []).flatMap(({ session }) =>
    session.swings.flatMap((swing) => swing.readings.map((reading) => [reading.typed, reading.value])),
  );

describe("a sheet reads as the CSV of the same rows", () => {
  it("dates are days, numbers keep every digit of the file", async () => {
    const preview = await readBook(
      oneSheet(row(1, 66.5), row(2, { raw: "0.30000000000000004" }), row(3, { raw: "66.10", style: STYLE.decimals })),
    );
    expect(planLines(preview)).toContain("Bea 2026-03-08 iron/1 swing 1 hinge 66.5");
    const [whole] = preview.questions;
    expect([whole?.code, typed(await readBook(oneSheet(row(1, { raw: "66.10" }))))]).toEqual([
      "small-some",
      [["66.10", 66.1]],
    ]);
  });

  // 46089 is 2026-03-08 in the count from 1900 (ECMA-376 part 1, 18.17.4.1), 44627 in the count from 1904.
  it.each([
    ["built-in", STYLE.date, "46089", 1900],
    ["written by the user", STYLE.writtenDate, "46089", 1900],
    ["with an hour", STYLE.dateTime, "46089.75", 1900],
    ["from 1904", STYLE.date, "44627", 1904],
  ] as const)("a date format %s", async (_, style, raw, epoch) => {
    const rows = [HEAD, ["Bea", { raw, style }, "7-iron", 1, 66]];
    expect(planLines(await readBook(makeWorkbook([{ name: "S", rows }], epoch)))).toEqual([
      "Bea 2026-03-08 iron/1 swing 1 hinge 66",
    ]);
  });

  it("a value that the program for sheets took for a date is a problem, never a number", async () => {
    const preview = await readBook(oneSheet(row(1, 66), row(2, { raw: "46145", style: STYLE.date })));
    expect(preview.issues).toMatchObject([{ code: "not-a-number", row: 3, value: "2026-05-03" }]);
  });

  it("a formula's stored value is taken and said; an error and one never worked out are problems", async () => {
    const preview = await readBook(
      oneSheet(
        row(1, { raw: "66", formula: "33*2" }),
        row(2, { raw: "#DIV/0!", kind: "e", formula: "1/0" }),
        row(3, { xml: '<c r="@"><f>A1</f></c>' }),
        row(4, { raw: "67", formula: "B1" }),
      ),
    );
    expect(typed(preview)).toEqual([
      ["66", 66],
      ["67", 67],
    ]);
    expect(preview.notes).toContainEqual(expect.objectContaining({ code: "formula-value", rows: [2, 5] }));
    expect(codes(preview.issues)).toEqual(["not-finite", "formula-without-value"]);
    expect(sayAll(preview).every((sentence) => sentence.length > 0)).toBe(true);
  });
});

describe("several sheets", () => {
  const sheets: MadeSheet[] = [
    { name: "March", rows: [HEAD, row(1, 66)] },
    { name: "April", rows: [HEAD, row(1, 67, "46120")] },
    { name: "Lists", rows: [["x"], ["y"]] },
  ];
  it("are asked about; one is read, or those with the same heads together", async () => {
    const book = makeWorkbook(sheets);
    const asked = await readBook(book);
    expect(asked.questions[0]?.options.map(({ id }) => id)).toEqual(["all", "sheet-1", "sheet-2", "sheet-3"]);
    expect(asked.plan).toBeNull();
    expect(planLines(await readBook(book, { "answer:sheet": "sheet-2" }))).toEqual([
      "Bea 2026-04-08 iron/1 swing 1 hinge 67",
    ]);
    expect(planLines(await readBook(book, { "answer:sheet": "all" }))).toHaveLength(2);
  });
  it("hidden ones are named, and read only when they are chosen", async () => {
    const book = makeWorkbook([...sheets.slice(0, 1), { name: "Old", rows: [HEAD, row(1, 70)], state: "veryHidden" }]);
    const preview = await readBook(book);
    expect(preview.notes).toContainEqual(
      expect.objectContaining({ code: "hidden-sheets", args: expect.objectContaining({ sheets: "Old" }) }),
    );
    expect(typed(preview)).toEqual([["66", 66]]);
    expect(typed(await readBook(book, { "answer:sheet": "sheet-2" }))).toEqual([["70", 70]]);
  });
});

/** The first packed byte of a part turned round. */
function flipped(bytes: Uint8Array, name: string): Uint8Array {
  const at = Buffer.from(bytes).indexOf(name) + name.length;
  return bytes.map((byte, place) => (place === at + 3 ? byte ^ 255 : byte));
}

describe("what no program for sheets writes is refused in words", () => {
  const parts = () => workbookParts([{ name: "S", rows: [HEAD, row(1, 66)] }]);
  const withSheet = (xml: string) => zipParts({ ...parts(), "xl/worksheets/sheet1.xml": xml });
  const sheet = sheetXml([HEAD, row(1, 66)]);
  it.each([
    ["entities", withSheet(sheet.replace("?>", '?><!DOCTYPE x [<!ENTITY a "b">]>'))],
    ["an outside entity", withSheet(sheet.replace("?>", '?><!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/hostname">]>'))],
    [
      "a cell at the far end",
      withSheet(sheet.replace("</sheetData>", '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData>')),
    ],
    ["a remark inside a value", withSheet(sheet.replace("<v>66</v>", "<v>6<!-- -->6</v>"))],
    ["a literal stretch inside a value", withSheet(sheet.replace("<v>66</v>", "<v><![CDATA[66]]></v>"))],
    ["no workbook in the packed file", zipParts({ "[Content_Types].xml": "<Types/>" })],
    ["a sheet that breaks off", withSheet(sheet.slice(0, 200))],
    ["a sheet with one byte changed", flipped(zipParts(parts()), "xl/worksheets/sheet1.xml")],
  ])("%s", async (_, bytes) => {
    const preview = await readBook(bytes);
    expect([codes(preview.issues), preview.plan]).toEqual([["workbook"], null]);
    expect(sayAll(preview)[0]).toMatch(/Nothing of it was read/);
  });
});
