import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { countCells } from "@/app/_ui/grid/count-cells";
import { fillWords } from "@/app/_ui/grid/fill-words";
import { letterKey, NOT_MEASURABLE } from "@/app/_ui/grid/letter-key";
import { typedNumber } from "@/app/_ui/grid/typed-number";
import { parseCell } from "@/lib/ingest/parse-cell";

describe("the number in a cell, for the question of sign or digit", () => {
  it("is read with every minus, a decimal comma and full-width figures", () => {
    for (const text of ["-3.5", "−3,5", "–3,5", "‑3.5", "－３．５", " − 3,5 °"])
      expect([text, typedNumber(text)]).toEqual([text, -3.5]);
  });

  it("is none where the server would ask or refuse: 1,234, 8o, -, n/m, blank", () => {
    for (const text of ["1,234", "8o", "-", "n/m", "", "1e3", "88 cm"])
      expect([text, typedNumber(text)]).toEqual([text, null]);
  });

  it("never differs from what the server reads: whatever is a number here is the same number there", () => {
    const unit = fc.constantFrom(..."0123456789.,-−–－‑+ ５．°%'deg".split(""));
    let numbers = 0;
    fc.assert(
      fc.property(fc.string({ unit, maxLength: 9 }), (text) => {
        const here = typedNumber(text);
        if (here === null) return;
        numbers += 1;
        const there = parseCell(text);
        expect([text, there.kind === "number" ? there.value : there]).toEqual([text, here]);
      }),
      { numRuns: 20_000 },
    );
    expect(numbers).toBeGreaterThan(500);
  });
});

describe("single letters", () => {
  it("n can't be measured, x empties, s turns the sign, k keeps, r opens the rest; capitals alike", () => {
    expect(letterKey("n", "", "typed")).toEqual({ kind: "write", text: NOT_MEASURABLE });
    expect(letterKey("X", "88", "typed")).toEqual({ kind: "write", text: "" });
    expect(letterKey("k", "170", "typed")).toEqual({ kind: "keep" });
    expect(letterKey("r", "", "typed")).toEqual({ kind: "rest" });
  });

  it("s turns the sign and leaves the figures as typed: 3,5 to -3,5, and −3,5 back", () => {
    expect(letterKey("s", "3,5", "typed")).toEqual({ kind: "write", text: "-3,5" });
    expect(letterKey("s", "−3,5", "typed")).toEqual({ kind: "write", text: "3,5" });
    expect(letterKey("s", "+4", "typed")).toEqual({ kind: "write", text: "-4" });
    expect(letterKey("s", "", "typed")).toEqual({ kind: "spent" });
  });

  it("a letter within a word is typed, so units can be written: 12 i, then n", () => {
    expect(letterKey("n", "12 i", "typed")).toBeNull();
    expect(letterKey("d", "12 ", "typed")).toBeNull();
    expect(letterKey("n", "12 deg", "selected")).toEqual({ kind: "write", text: NOT_MEASURABLE });
    expect(letterKey("s", "12 deg", "selected")).toEqual({ kind: "write", text: "-12 deg" });
    expect(letterKey("5", "n/m", "typed")).toBeNull();
  });

  it("n/m typed in full gives n/m, as does not visible: the letters behind the first are spent", () => {
    for (const word of ["n/m", "n.m.", "not visible", "nm"]) {
      let text = "";
      for (const key of word) {
        const effect = letterKey(key, text, "typed");
        if (effect === null) text += key;
        else if (effect.kind === "write") text = effect.text;
      }
      expect([word, text]).toEqual([word, NOT_MEASURABLE]);
    }
  });

  it("leaves longer keys alone", () => expect(letterKey("Enter", "", "typed")).toBeNull());

  it("what n writes is read by the server as not measurable", () =>
    expect(parseCell(NOT_MEASURABLE)).toEqual({ kind: "not-measurable" }));
});

describe("how far one is", () => {
  it("two swings and two fundamentals begun are 4 cells, 3 of them answered", () => {
    expect(
      countCells([
        ["88", "", "n/m"],
        ["", "", "4"],
        ["", " ", ""],
      ]),
    ).toEqual({ answered: 3, begun: 4 });
  });

  it("nothing begun is 0 of 0", () => expect(countCells([["", ""]])).toEqual({ answered: 0, begun: 0 }));

  it("fills the gaps of a sentence, and leaves a gap that nobody fills", () =>
    expect(fillWords("{a} of {b}, {c}", { a: 3, b: "4" })).toBe("3 of 4, {c}"));
});
