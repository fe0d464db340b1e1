import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { restoreCell } from "@/lib/ingest/restore-cell";
import { buildCsv } from "@/lib/report/csv";
import { hostileText } from "../ingest/hostile-texts";

describe("a table as CSV", () => {
  it("quotes commas, quotes and line ends as RFC 4180 has it", () =>
    expect(
      buildCsv(
        ["a", "b"],
        [
          ["x,y", 'say "z"'],
          ["two\nlines", 1.5],
        ],
      ),
    ).toBe('a,b\r\n"x,y","say ""z"""\r\n"two\nlines",1.5\r\n'));
  it.each(["=1+1", "+cmd", "@x", "-x", "\tx", "＝1"])("%s gets an apostrophe first; -3.2 stays a number", (text) => {
    expect(buildCsv(["a"], [[text]])).toContain(`'${text}`);
    expect(buildCsv(["a"], [["-3.2"]])).toBe("a\r\n-3.2\r\n");
    expect(buildCsv(["a"], [[-3.2]])).toBe("a\r\n-3.2\r\n");
  });
  it.each([
    ...[
      "=1+1",
      "=",
      "+1 2",
      "+",
      "-",
      "-2+3",
      "--1",
      "@x",
      "@",
      "\tx",
      "\t",
      "\rx",
      "\r\n=1",
      "\nx",
      "\u0000=1",
      "＝1",
      "＋1",
    ],
    ...[
      "－1",
      "＠x",
      "'=1",
      "''=1",
      "'-x",
      "'\t",
      '=HYPERLINK("x")',
      '="a,b"',
      "-3.2.1",
      "+49 30",
      "-1e5",
      "-∞",
      "@\u202E",
    ],
    ...["=\n2", "-3.2 %"],
  ])("J3: %j is text to a spreadsheet, and the import gives it back as it was", (text) => {
    const file = buildCsv(["a", "b"], [[text, "x"]]);
    const [, row] = Papa.parse<string[]>(file, { delimiter: ",", newline: "\r\n" }).data;
    expect(row?.[0]).toBe(`'${text}`);
    expect(row?.map(restoreCell)).toEqual([text, "x"]);
  });
  it.each(["-3.2", "+3.2", "-3", "-3,2", "0", "12", "x=1", " =1", "'", "'x", "'5", "", "−3"])(
    "J3: %j needs no apostrophe and gets none, in or out",
    (text) => {
      const [, row] = Papa.parse<string[]>(buildCsv(["a", "b"], [[text, "x"]]), { delimiter: "," }).data;
      expect(row).toEqual([text, "x"]);
      expect(restoreCell(text)).toBe(text);
    },
  );
  it("2,000 tables of any texts: papaparse (an independent reader) and the import's rule give every cell back (seed 20261126)", () => {
    const cells = fc.oneof(hostileText, fc.string({ unit: "binary" }));
    fc.assert(
      fc.property(fc.array(fc.tuple(cells, cells), { minLength: 1, maxLength: 5 }), (rows) => {
        const read = Papa.parse<string[]>(buildCsv(["p", "q"], rows), { delimiter: ",", newline: "\r\n" }).data;
        expect(read.slice(1, rows.length + 1).map((row) => row.map(restoreCell))).toEqual(rows);
        for (const row of read)
          for (const one of row) expect(one).not.toMatch(/^[=@\t\r\n\0＝＋－＠]|^[+-](?!\d+([.,]\d+)?$)/u);
      }),
      { seed: 20261126, numRuns: 2000 },
    );
  });
});
