import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { buildReadingSheet, SHEET_COLUMNS } from "@/lib/report/build-reading-sheet";
import { mirrorDrawing } from "@/lib/report/mirror-drawing";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const read = BUILT_IN.filter((each) => each.derivedFrom === null);
const source = {
  studentId: "s1",
  alias: "Pim",
  hand: "right" as const,
  fundamentals: read,
  first: ["hinge", "setup-tilt"],
};
const sheet = (swings?: string, columns: readonly string[] = [], over = {}) =>
  buildReadingSheet(words, { ...source, ...over }, { swings, columns });
const ids = (made: ReturnType<typeof sheet>) => made.columns.map((column) => column.fundamentalId);

describe("the reading sheet", () => {
  it("has five swings and the columns of the form where nobody wished otherwise", () => {
    expect(sheet().rows).toEqual(["1", "2", "3", "4", "5"]);
    expect(ids(sheet())).toEqual(["setup-tilt", "hinge"]);
  });

  it("takes 5 to 10 swings; fewer, more and nonsense come to the nearest that there is", () => {
    for (const [wish, swings] of [
      ["8", 8],
      ["1", 5],
      ["99", 10],
      ["-3", 5],
      ["1e9", 5],
      ["", 5],
    ] as const)
      expect([wish, sheet(wish).rows.length]).toEqual([wish, swings]);
  });

  it("unknown fundamentals are passed over, and none but unknown ones gives the form's", () => {
    expect(ids(sheet("5", ["no-such", "foot-line"]))).toEqual(["foot-line"]);
    expect(ids(sheet("5", ["no-such"]))).toEqual(ids(sheet()));
  });

  it("holds eight at most, and names every one that it leaves out", () => {
    const made = sheet(
      "10",
      read.map((each) => each.id),
    );
    expect(made.columns.length).toBe(SHEET_COLUMNS);
    for (const left of read.slice(SHEET_COLUMNS))
      expect(made.notice).toContain(words.say(`fundamental.${left.id}.name`));
    expect(sheet().notice).toBe("");
  });

  it("asks of each view's film only where a column is read from it", () => {
    expect(sheet("5", ["foot-line"]).films.map((film) => film.view)).toEqual(["Film down the line"]);
    expect(sheet("5", ["foot-line", "hinge"]).films.length).toBe(2);
  });

  it("a left-hander's drawings are the mirror images", () => {
    const [right, left] = [sheet(), sheet("5", [], { hand: "left" })];
    expect(left.columns.map((column) => column.drawing)).toEqual(
      right.columns.map((column) => mirrorDrawing(column.drawing)),
    );
  });

  it("its page's title names no student", () => expect(sheet().documentTitle).not.toContain("Pim"));
});
