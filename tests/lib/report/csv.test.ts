import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { buildCsv } from "@/lib/report/csv";

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
  it("papaparse (an independent reader) reads back every text that needs no apostrophe", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.array(
            fc.string().map((text) => `x${text}`),
            { minLength: 2, maxLength: 2 },
          ),
          { minLength: 1, maxLength: 5 },
        ),
        (rows) => {
          const read = Papa.parse<string[]>(buildCsv(["p", "q"], rows), { delimiter: ",", newline: "\r\n" }).data;
          expect(read.slice(1, rows.length + 1)).toEqual(rows);
        },
      ),
    );
  });
});
