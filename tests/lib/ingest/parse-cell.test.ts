import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseCell } from "@/lib/ingest/parse-cell";
import { parseValue } from "@/lib/ingest/parse-value";

describe("a value typed into a cell", () => {
  it("takes every dash before a figure for minus: hyphen, minus, figure dash, en and em dash, full-width", () => {
    for (const dash of ["-", "‐", "‑", "‒", "–", "—", "−", "﹣", "－"])
      for (const gap of ["", " "]) expect(parseCell(`${dash}${gap}3,5`)).toMatchObject({ kind: "number", value: -3.5 });
  });

  it("takes full-width figures as meant, where a file is asked about", () => {
    expect(parseCell("－１２．５")).toMatchObject({ kind: "number", value: -12.5 });
    expect(parseValue("１２")).toMatchObject({ kind: "issue", code: "full-width" });
  });

  it("a dash alone can't be measured, and a dash within stays what it was", () => {
    for (const dash of ["-", "–", "—", "−"]) expect(parseCell(dash)).toEqual({ kind: "not-measurable" });
    expect(parseCell("3–4").kind).toBe("issue");
  });

  it("reads everything else as a file is read", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(..."0189.,+ °noSlm/%".split("")), maxLength: 8 }), (text) => {
        expect(parseCell(text)).toEqual(parseValue(text));
      }),
      { numRuns: 3000 },
    );
  });
});
