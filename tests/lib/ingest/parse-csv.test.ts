import { describe, expect, it } from "vitest";
import { parseCsv } from "@/lib/ingest/parse-csv";
import { spentSince } from "../../cpu-time";

const cells = (text: string) => parseCsv(text).records.map((record) => record.cells);

describe("delimiters", () => {
  it.each([",", ";", "\t", "|"])("%j is found from the header", (sign) => {
    const parsed = parseCsv(`a${sign}b${sign}c\n1${sign}2${sign}3\n`);
    expect(parsed.delimiter).toBe(sign);
    expect(parsed.records[0]?.cells).toEqual(["1", "2", "3"]);
  });
  it("a comma inside a quoted header counts for nothing", () =>
    expect(parseCsv('"hip sway, top";b\n1;2').delimiter).toBe(";"));
  it("sep= names it, and rows keep their place in the file", () => {
    const parsed = parseCsv("sep=;\na,x;b\n1;2,5\n");
    expect(parsed).toMatchObject({ delimiter: ";", header: { row: 2, cells: ["a,x", "b"] } });
    expect(parsed.records).toEqual([{ row: 3, cells: ["1", "2,5"] }]);
  });
});

describe("RFC 4180", () => {
  it("doubled quotes, quoted delimiters and quoted line breaks", () =>
    expect(cells('a,b\n"x ""y""","1,2"\n"line\nbreak",3\n')).toEqual([
      ['x "y"', "1,2"],
      ["line\nbreak", "3"],
    ]));
  it("a row with a quoted line break counts once; blank rows count too", () =>
    expect(parseCsv('a,b\n\n"x\ny",1\n\n2,3\n').records.map((record) => record.row)).toEqual([3, 5]));
  it("the last row needs no line end, a blank row is no record, ragged rows stay as they are", () =>
    expect(cells("a,b,c\n1\n,,\n1,2,3,4")).toEqual([["1"], ["1", "2", "3", "4"]]));
  it("a header without rows, and nothing at all", () => {
    expect(parseCsv("a,b\n")).toMatchObject({ header: { row: 1 }, records: [], faults: [] });
    expect(parseCsv("\n\n")).toMatchObject({ header: null, records: [] });
  });
});

describe("broken quotes keep the rest of the file", () => {
  it("an unclosed quote names its row and line; every other row is read", () => {
    const parsed = parseCsv('a,b\n"p\nq",1\n"x,3\n4,5\n6,7\n');
    expect(parsed.faults).toEqual([{ code: "unclosed-quote", row: 3, line: 4, text: '"x,3' }]);
    expect(parsed.records.map((record) => record.cells)).toEqual([
      ["p\nq", "1"],
      ["4", "5"],
      ["6", "7"],
    ]);
  });
  it("a quote closed by a later row's quote swallows no row between", () => {
    const parsed = parseCsv('a,b,c\n1,"2,3\n1,2,3\n4,"5",6\n7,8,9\n');
    expect(parsed.faults.map((fault) => fault.row)).toEqual([2]);
    expect(parsed.records.map((record) => record.row)).toEqual([3, 4, 5]);
  });
  it("text behind a closing quote", () => expect(parseCsv('a,b\n"x"y,3\n4,5\n').faults).toMatchObject([{ row: 2 }]));
  it("rows keep their numbers across the stretches in which a long file is read", () => {
    const line = `${"1,".repeat(40)}"a\nb",2`;
    const parsed = parseCsv(`h\n${`${line}\n\n`.repeat(5000)}`);
    expect(parsed.faults).toEqual([]);
    expect(parsed.records.map((record) => record.row)).toEqual(Array.from({ length: 5000 }, (_, at) => 2 + 2 * at));
  });
  it("a file of nothing but broken quotes ends in one fault, soon", () => {
    const started = process.cpuUsage();
    const parsed = parseCsv(`a,b\n${'"x"b,c\n'.repeat(300_000)}`);
    expect(parsed.faults.at(-1)?.code).toBe("too-many-broken-quotes");
    expect(parsed.faults.length).toBe(101);
    expect(spentSince(started)).toBeLessThan(10_000);
  });
});
