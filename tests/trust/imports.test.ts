import { describe, expect, it } from "vitest";
import { parseCsv } from "@/lib/ingest/parse-csv";
import { encodeAs } from "../lib/ingest/encode-as";
import { codes, planLines, readFile, sayAll, silentRows } from "../lib/ingest/import-setup";
import { countCases } from "./count-cases";

const NAMED = "student,date,club,swing,hinge\nZoë,2026-03-08,7-iron,1,66\n";
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

function utf16(text: string, order: "little" | "big", mark: "marked" | "bare"): Uint8Array {
  const units = mark === "marked" ? `\ufeff${text}` : text;
  const bytes = Array.from({ length: units.length }, (_, at) => [
    units.charCodeAt(at) & 255,
    units.charCodeAt(at) >> 8,
  ]);
  return Uint8Array.from(bytes.flatMap((pair) => (order === "little" ? pair : pair.toReversed())));
}

describe("I1: encodings", () => {
  const ran = countCases("I1", 12);
  const READ = ["Zoë 2026-03-08 iron/1 swing 1 hinge 66"];
  it.each([
    ["UTF-8", utf8(NAMED)],
    ["UTF-8 with a mark", utf8(`\ufeff${NAMED}`)],
    ["UTF-16 LE with a mark", utf16(NAMED, "little", "marked")],
    ["UTF-16 BE with a mark", utf16(NAMED, "big", "marked")],
    ["UTF-16 LE bare", utf16(NAMED, "little", "bare")],
    ["UTF-16 BE bare", utf16(NAMED, "big", "bare")],
    ["Windows-1252", encodeAs(NAMED, "windows-1252")],
    ["Macintosh", encodeAs(NAMED, "macintosh")],
    ["decomposed UTF-8", utf8(NAMED.normalize("NFD"))],
  ])("%s gives the exact name", (_, bytes) => {
    ran.add();
    expect(planLines(readFile(bytes))).toEqual(READ);
  });
  it.each([
    ["Łukasz", "windows-1250"],
    ["Łukasz", "iso-8859-2"],
    ["Сергей", "windows-1251"],
    ["Chloè", "windows-1252"],
    ["Doğan", "windows-1254"],
  ])("%s in %s: the exact name, or the encoding is asked and no name is taken", (name, encoding) => {
    ran.add();
    const preview = readFile(encodeAs(NAMED.replace("Zoë", name), encoding));
    const [first] = preview.questions;
    if (first?.code === "encoding") {
      expect(first.options.map((option) => option.args.sample)).toContain(name);
      expect(preview.plan).toBeNull();
    } else expect(first?.args.value).toBe(name);
    expect(JSON.stringify(preview)).not.toContain("\ufffd");
  });
});

describe("I2: delimiters, decimal marks, thousands", () => {
  const ran = countCases("I2", 24);
  const rows = [
    ["student", "date", "club", "swing", "hinge", "hip-sway"],
    ["Bea", "2026-03-08", "7-iron", "1", "66.5", "4.25"],
    ["Bea", "2026-03-08", "7-iron", "2", "67.5", "-3.5"],
  ];
  const file = (sign: string, change: (cell: string) => string = (cell) => cell) =>
    rows
      .map((row) =>
        row
          .map(change)
          .map((cell) => (cell.includes(sign) ? `"${cell}"` : cell))
          .join(sign),
      )
      .join("\n");
  const plain = planLines(readFile(file(",")));
  const comma = (cell: string) => (/^-?\d+\.\d+$/.test(cell) ? cell.replace(".", ",") : cell);
  const signs = [",", ";", "\t", "|"];
  for (const sign of signs) {
    for (const hint of ["", `sep=${sign}\n`]) {
      for (const [name, change] of [
        ["point", (cell: string) => cell],
        ["comma", comma],
      ] as const) {
        it(`${JSON.stringify(sign)} ${hint === "" ? "unsaid" : "said"}, decimal ${name}: as the plain twin`, () => {
          ran.add();
          expect(planLines(readFile(hint + file(sign, change)))).toEqual(plain);
        });
      }
    }
  }
  const one = (value: string) => readFile(`student;date;club;swing;hip-sway\nBea;2026-03-08;7-iron;1;${value}\n`);
  it.each([
    ["1,234", "comma"],
    ["12,345", "comma"],
  ])("a lone %s is asked", (value, id) => {
    ran.add();
    expect([one(value).plan, one(value).questions[0]?.id]).toEqual([null, id]);
  });
  it.each([
    ["1.5", 1.5],
    ["1,5", 1.5],
    ["1,25", 1.25],
    ["-0,5", -0.5],
    [",5", 0.5],
    ["2,50", 2.5],
  ])("%s is %d and no question", (value, number) => {
    ran.add();
    expect(one(value).plan?.sessions[0]?.session.swings[0]?.readings[0]?.value).toBe(number);
  });
});

describe("I3: RFC 4180", () => {
  const ran = countCases("I3", 20);
  const cells = (text: string) => {
    const { header, records } = parseCsv(text.replace(/\r\n?/g, "\n"));
    return [header?.cells, ...records.map((record) => record.cells)];
  };
  // Section 2 of the RFC (October 2005), rules 1 to 7, with its own examples; the last pair of rule 1 against rule 2.
  it.each([
    [
      "1",
      "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "2",
      "aaa,bbb,ccc\r\nzzz,yyy,xxx",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "3",
      "field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
      [
        ["field_name", "field_name", "field_name"],
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ["4", "aaa,bbb,ccc", [["aaa", "bbb", "ccc"]]],
    [
      "5",
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "6",
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "b\nbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ["7", '"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
    ["4, spaces are part of a field", "aaa , bbb,ccc", [["aaa ", " bbb", "ccc"]]],
    ["6, a comma in quotes", '"a,b",c', [["a,b", "c"]]],
    ["7, only quotes", '"""","",x', [['"', "", "x"]]],
    [
      "mixed line ends",
      "a,b\r\n1,2\n3,4\r5,6",
      [
        ["a", "b"],
        ["1", "2"],
        ["3", "4"],
        ["5", "6"],
      ],
    ],
    [
      "a last blank line",
      "a,b\n1,2\n\n",
      [
        ["a", "b"],
        ["1", "2"],
      ],
    ],
  ])("rule %s", (_, text, expected) => {
    ran.add();
    expect(cells(text)).toEqual(expected);
  });
  const head = "student,date,club,swing,hinge,note\n";
  const good = "Bea,2026-03-08,7-iron,1,66,";
  it.each([
    ["too few cells", `${head}Bea,2026-03-08,7-iron,1,66\n`, 1, []],
    ["too many cells", `${head}${good},,x\n${good}\n`, 1, ["too-many-cells"]],
    ["a quoted line break in a note", `${head}${good}"a\nb"\n`, 1, []],
    ["a doubled quote in a note", `${head}${good}"say ""so"""\n`, 1, []],
    ["an unclosed quote", `${head}${good}"open\nBea,2026-03-09,7-iron,1,67,\n`, 1, ["unclosed-quote"]],
    ["a quote in the middle of a cell", `${head}${good}5" longer\n`, 1, []],
    ["an unclosed quote at the very end", `${head}${good}ok\n"`, 1, ["unclosed-quote"]],
    ["quotes round every cell", `${head}"Bea","2026-03-08","7-iron","1","66","x"\n`, 1, []],
  ])("%s: good rows kept, the fault named by its line", (_, text, ready, issues) => {
    ran.add();
    const preview = readFile(text);
    expect([preview.rowsReady, codes(preview.issues), silentRows(preview)]).toEqual([ready, issues, []]);
    if (issues.includes("unclosed-quote")) expect(sayAll(preview).join(" ")).toMatch(/line \d+ of the file/);
  });
});
