import { describe, expect, it } from "vitest";
import { parseValue } from "@/lib/ingest/parse-value";

describe("a measured value in a cell: a fixed table", () => {
  it.each([
    ["12.5", 12.5],
    ["+3", 3],
    ["-3.2", -3.2],
    ["−3", -3],
    ["–3", -3],
    [".5", 0.5],
    ["0", 0],
    ["-0", 0],
    ["007", 7],
    ["12,5", 12.5],
    [",5", 0.5],
    ["0,125", 0.125],
    ["1.234,5", 1234.5],
    ["1,234.5", 1234.5],
    ["1 234,5", 1234.5],
    ["1'234", 1234],
    ["1,234,567", 1234567],
    ["1.2E+01", 12],
    ["5e-1", 0.5],
    ["'-3", -3],
    ["\u200e12", 12],
    ["  12.5\u00a0", 12.5],
  ])("%j is the number %d", (text, value) =>
    expect(parseValue(text)).toMatchObject({ kind: "number", value, unit: null }),
  );

  it("minus nought is stored as nought", () => {
    const parsed = parseValue("-0.0");
    expect(parsed.kind === "number" && Object.is(parsed.value, 0)).toBe(true);
  });

  it.each([
    ["12°", 12, "deg"],
    ["12 deg", 12, "deg"],
    ["5%", 5, "percent"],
    ["9 cm", 9, "cm"],
    ["1.4 rad", 1.4, "rad"],
    ["12,5 mm", 12.5, "mm"],
    ["20 % of stance", 20, "pct-stance"],
  ])("%j is %d with the unit %s", (text, value, unit) =>
    expect(parseValue(text)).toMatchObject({ kind: "number", value, unit }),
  );

  it.each(["", " ", "\u00a0", "\t", "\ufeff"])("%j is blank, never nought", (text) =>
    expect(parseValue(text)).toEqual({ kind: "blank" }),
  );

  it.each(["-", "–", "—", "n/m", "N/M", "nm", "not measurable", "Not visible"])("%j is not measurable", (text) =>
    expect(parseValue(text)).toEqual({ kind: "not-measurable" }),
  );

  it("a lone 1,234 has two readings, and both are given", () => {
    expect(parseValue("1,234")).toMatchObject({ kind: "either", decimal: 1.234, grouped: 1234 });
    expect(parseValue("-1,234")).toMatchObject({ kind: "either", decimal: -1.234, grouped: -1234 });
    expect(parseValue("1.234")).toMatchObject({ kind: "number", value: 1.234, grouped: 1234 });
  });

  it.each([
    ["8o", 80],
    ["l2", 12],
    ["-3O", -30],
    ["1S.5", 15.5],
  ])("%j looks like %d and is asked about", (text, value) =>
    expect(parseValue(text)).toMatchObject({ kind: "look-alike", value }),
  );

  it.each([
    ["NaN", "not-finite"],
    ["Infinity", "not-finite"],
    ["-inf", "not-finite"],
    ["∞", "not-finite"],
    ["#N/A", "not-finite"],
    ["#DIV/0!", "not-finite"],
    ["1e400", "too-large"],
    ["-1e400", "too-large"],
    ["1e-400", "too-small"],
    ["0x10", "not-a-number"],
    ["0b11", "not-a-number"],
    ["１２", "full-width"],
    ["±2", "plus-minus"],
    ["12 furlongs", "unknown-unit"],
    ["twelve", "not-a-number"],
    ["--3", "not-a-number"],
    ["1.2.3", "not-a-number"],
    ["1,2,3", "not-a-number"],
    ["12.", "not-a-number"],
    ["(3)", "not-a-number"],
    ["3-5", "not-a-number"],
    ["[]", "not-a-number"],
    ["=1+1", "not-a-number"],
    ["true", "not-a-number"],
    ["null", "not-a-number"],
    ["9".repeat(61), "not-a-number"],
  ])("%j is refused as %s", (text, code) => expect(parseValue(text)).toMatchObject({ kind: "issue", code }));

  it("full-width figures say what would be read", () =>
    expect(parseValue("１２")).toEqual({ kind: "issue", code: "full-width", taken: "12" }));
});
