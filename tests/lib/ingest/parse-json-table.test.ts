import { describe, expect, it } from "vitest";
import { parseJsonTable } from "@/lib/ingest/parse-json-table";
import { spentSince } from "../../cpu-time";
import { planLines, readFile, sayAll } from "./import-setup";

describe("a list of plain objects is a table", () => {
  it("heads are the names of all objects; numbers keep their digits, null is blank", () => {
    expect(parseJsonTable('[{"a": 1.10, "b": "x"},\n {"b": null, "c": true, "a": -0.30000000000000004e1}]')).toEqual({
      kind: "ok",
      header: { row: 0, cells: ["a", "b", "c"] },
      records: [
        { row: 1, cells: ["1.10", "x", ""] },
        { row: 2, cells: ["-0.30000000000000004e1", "", "true"] },
      ],
    });
  });

  it("is read as the CSV of the same rows, long and wide", () => {
    const long = '[{"student":"Bea","date":"2026-03-08","club":"7-iron","swing":1,"fundamental":"hinge","value":66.5}]';
    const wide = '[{"student":"Bea","date":"2026-03-08","club":"7-iron","swing":1,"hinge":66.5}]';
    for (const text of [long, wide])
      expect(planLines(readFile(text))).toEqual(["Bea 2026-03-08 iron/1 swing 1 hinge 66.5"]);
  });
});

const deep = "[".repeat(100_000);

describe("what two programs would read in two ways is refused whole", () => {
  it.each([
    ['[{"a":1,"a":2}]', "doubled", 1],
    ['[{"a":1},{"\\u005f_proto__":{}}]', "proto", 2],
    ['[{"constructor":1}]', "proto", 1],
    ['[{"a":[1]}]', "nested", 1],
    [`[{"a":${deep}`, "nested", 1],
    [deep, "not-an-object", 1],
    ['{"a":1}', "not-a-list", 0],
    ['[{"a":1},2]', "not-an-object", 2],
    ['[{"a":1}', "syntax", 1],
    ['[{"a":1}]x', "syntax", 1],
    ['[{"a":01}]', "syntax", 1],
    ['[{"a":NaN}]', "syntax", 1],
    ['[{"a":"\u0001"}]', "syntax", 1],
    ['[{"a":"x}]', "syntax", 1],
    [`[{${Array.from({ length: 501 }, (_, at) => `"c${at}":1`).join(",")}}]`, "many-columns", 1],
  ])("%.40s: %s", (text, why, row) => {
    const begun = process.cpuUsage();
    expect(parseJsonTable(text)).toMatchObject({ kind: "refused", why, row });
    expect(spentSince(begun)).toBeLessThan(1000);
    expect(({} as Record<string, unknown>).a).toBeUndefined();
  });

  it("the refusal is said in words, with the line", () => {
    expect(sayAll(readFile('[{"a":1},\n{"a":1,"a":2}]'))[0]).toMatch(/^Object 2, line 2: “a” stands there twice/);
  });

  it("half a letter is no text: the row is left out, not changed", () => {
    const preview = readFile('[{"student":"Bea\\ud800","date":"2026-03-08","club":"7-iron","hinge":66}]');
    expect([preview.plan, preview.issues.map(({ code }) => code)]).toEqual([null, ["nul-sign"]]);
  });
});
