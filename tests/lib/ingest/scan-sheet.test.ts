import { describe, expect, it } from "vitest";
import { scanSheet } from "@/lib/ingest/scan-sheet";

const sheet = (rows: string) => `<worksheet><sheetData>${rows}</sheetData></worksheet>`;

describe("what a sheet's reader doesn't tell", () => {
  it("names formulas and errors by row and column, and counts what is filled", () => {
    const rows =
      '<row r="1"><c r="A1"><v>1</v></c><c r="C1"><f>A1</f><v>1</v></c></row><row r="3"><c r="B3" t="e"><f>1/0</f><v>#DIV/0!</v></c></row>';
    expect(scanSheet(sheet(rows))).toEqual({
      kind: "ok",
      formulas: [
        { row: 1, at: 2 },
        { row: 3, at: 1 },
      ],
      errors: [{ row: 3, at: 1, text: "#DIV/0!" }],
      rows: 3,
      columns: 3,
      filled: 3,
    });
  });

  it("reads names with a prefix and either kind of quote, and passes over remarks before the table", () => {
    const xml = `<!-- made by hand --><x:worksheet><x:sheetData><x:row r='2'><x:c r='B2'><x:v>1</x:v></x:c></x:row></x:sheetData></x:worksheet>`;
    expect(scanSheet(xml)).toMatchObject({ kind: "ok", rows: 2, columns: 2, filled: 1 });
  });

  it.each([
    ['<row r="1"><c r="XFD1"/></row>', "far-cell"],
    ['<row r="200001"/>', "far-cell"],
    ['<row r="100000"><c r="AO100000"/></row>', "span"],
    ['<row r="1"><c/></row>', "broken"],
    ['<row r="1"><c r="1A"/></row>', "broken"],
    ['<row r="-1"/>', "broken"],
    ['<row r="1"><c r="A1"><v>1<!-- -->2</v></c></row>', "broken"],
    ['<row r="1"><c r="A1"><v><![CDATA[1]]></v></c></row>', "broken"],
  ])("%s is refused: %s", (rows, why) => expect(scanSheet(sheet(rows))).toMatchObject({ kind: "refused", why }));

  it("a sheet that defines entities is refused", () =>
    expect(scanSheet(`<!DOCTYPE x [<!ENTITY a "b">]>${sheet("")}`)).toMatchObject({ why: "entities" }));
});
