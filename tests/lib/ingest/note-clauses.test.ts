import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { noteClauses, noteWords } from "@/lib/ingest/note-clauses";

const clausesOf = (text: string) => noteClauses(text).map(([from, to]) => text.slice(from, to).trim());

describe("the clauses of a note", () => {
  it("end at commas, points and joining words", () =>
    expect(clausesOf("2 thin, one fat and solid; then toe")).toEqual(["2 thin", "one fat", "solid", "", "toe"]));

  it("2/5, 2-3, 2–3 and all but one stay whole", () =>
    expect(clausesOf("2/5 fat. 2-3 thin. 2–3 thin. all but one solid but fat/thin")).toEqual([
      "2/5 fat",
      "2-3 thin",
      "2–3 thin",
      "all but one solid",
      "fat",
      "thin",
    ]));

  it("lie in order inside the text, whatever it is", () =>
    fc.assert(
      fc.property(fc.string(), (text) => {
        let last = 0;
        for (const [from, to] of noteClauses(text)) {
          expect(from).toBeGreaterThanOrEqual(last);
          expect(to).toBeGreaterThanOrEqual(from);
          last = to;
        }
        expect(last).toBe(text.length);
      }),
    ));
});

describe("the words of a clause", () => {
  it("a number takes what belongs to it, and each word says where it stands", () =>
    expect(noteWords("2/5 fat x 3 1st 2 - 3", 10).map(({ text, from, to }) => [text, from, to])).toEqual([
      ["2/5", 10, 13],
      ["fat", 14, 17],
      ["x3", 18, 21],
      ["1st", 22, 25],
      ["2-3", 26, 31],
    ]));
});
