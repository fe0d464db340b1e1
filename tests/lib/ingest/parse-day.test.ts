import { describe, expect, it } from "vitest";
import { parseDay } from "@/lib/ingest/parse-day";

describe("a day in a cell", () => {
  it.each([
    ["2026-03-08", "2026-03-08"],
    ["2026/3/8", "2026-03-08"],
    ["2026.03.08", "2026-03-08"],
    ["20260308", "2026-03-08"],
    ["2024-02-29", "2024-02-29"],
    ["25/03/2026", "2026-03-25"],
    ["25.3.2026", "2026-03-25"],
    ["03/25/2026", "2026-03-25"],
    ["03/03/2026", "2026-03-03"],
    ["8 Mar 2026", "2026-03-08"],
    ["8. March 2026", "2026-03-08"],
    ["March 8, 2026", "2026-03-08"],
    ["2026-03-08T10:15", "2026-03-08"],
    ["2026-03-08 10:15:00", "2026-03-08"],
    ["\u200e2026-03-08", "2026-03-08"],
  ])("%j is %s", (text, day) => expect(parseDay(text)).toMatchObject({ kind: "day", day }));

  it("03/04/2026 has two readings, and both are given", () =>
    expect(parseDay("03/04/2026")).toEqual({ kind: "ambiguous", dayFirst: "2026-04-03", monthFirst: "2026-03-04" }));

  it("a day above 12 tells the order in which the file writes", () => {
    expect(parseDay("25/03/2026")).toMatchObject({ order: "day-first" });
    expect(parseDay("03/25/2026")).toMatchObject({ order: "month-first" });
    expect(parseDay("2026-03-08")).toMatchObject({ order: null });
  });

  it("a spreadsheet's count of days: 46089 is 8 March 2026 from 1900, 9 March 2030 from 1904", () =>
    expect(parseDay("46089")).toEqual({ kind: "serial", from1900: "2026-03-08", from1904: "2030-03-09" }));

  it.each([
    ["2026-02-30", "impossible-date"],
    ["2025-02-29", "impossible-date"],
    ["2026-13-01", "impossible-date"],
    ["31/02/2026", "impossible-date"],
    ["00/00/2026", "impossible-date"],
    ["02/06/26", "two-digit-year"],
    ["8 Mar 26", "two-digit-year"],
    ["yesterday", "not-a-date"],
    ["8 Foo 2026", "not-a-date"],
    ["2026", "not-a-date"],
    ["-", "not-a-date"],
    ["1e400", "not-a-date"],
  ])("%j is refused as %s", (text, code) => expect(parseDay(text)).toMatchObject({ kind: "issue", code }));

  it("a two-digit year offers a date only where there is one", () => {
    expect(parseDay("25/06/26")).toMatchObject({ taken: "2026-06-25" });
    expect(parseDay("02/06/26")).toMatchObject({ taken: "" });
  });

  it.each(["", "  ", "\ufeff"])("%j is blank", (text) => expect(parseDay(text)).toEqual({ kind: "blank" }));
});
