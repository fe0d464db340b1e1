import { describe, expect, it } from "vitest";
import { buildDecidesBrief } from "@/lib/report/build-decides-brief";
import { BRIEF_THRESHOLDS } from "@/lib/verdict/brief-thresholds";
import { wordsFor } from "@/lib/words/catalogue";

const { table } = buildDecidesBrief(wordsFor("en"));
const thresholds = Object.values(BRIEF_THRESHOLDS);

describe("what puts a student on a list of the brief", () => {
  it("has a row for every threshold, none of whose cells is empty or said twice in the row", () => {
    expect(table.rows).toHaveLength(thresholds.length);
    for (const { cells } of table.rows) {
      expect(cells).toHaveLength(table.columns.length);
      expect(cells.every((cell) => cell !== "")).toBe(true);
      expect(new Set(cells).size).toBe(cells.length);
    }
  });

  it("says the very value that decides, with what it is counted in", () => {
    for (const [at, { value }] of thresholds.entries())
      expect(table.rows[at]?.cells[1]).toMatch(new RegExp(`(^|\\D)${value} (days|films)\\b`));
  });

  it("says who says so: own choices and own measurements as such, what the trade asks for by its place", () => {
    const sources = table.rows.map(({ cells }) => cells[3] ?? "");
    for (const [at, { source }] of thresholds.entries())
      expect(sources[at]).toMatch(source.startsWith("own choice") ? /^Own choice/ : /^(Own simulation|Asked for)/);
  });
});
