import { describe, expect, it } from "vitest";
import { codes, planLines, readFile, sayAll } from "./import-setup";

const LONG = "student,date,club,swing,fundamental,value,unit\n";
const WIDE = "student,date,club,swing,hinge,hip sway\n";

const long = (...rows: readonly string[]) => LONG + rows.join("\n");
const wide = (...rows: readonly string[]) => WIDE + rows.join("\n");

describe("both forms", () => {
  it("long and wide give the same sessions, swings and readings", () => {
    const fromLong = readFile(
      long(
        "Bea,2026-03-08,7-iron,1,hinge,66,deg",
        "Bea,2026-03-08,7-iron,1,hip-sway,4,% of stance",
        "Bea,2026-03-08,7-iron,2,hinge,n/m,deg",
        "Bea,2026-03-15,driver,1,wrist hinge,70,°",
      ),
    );
    const fromWide = readFile(
      wide("Bea,2026-03-08,7-iron,1,66,4", "Bea,2026-03-08,7-iron,2,n/m,", "Bea,2026-03-15,driver,1,70,"),
    );
    expect(planLines(fromLong)).toEqual([
      "Bea 2026-03-08 iron/1 swing 1 hinge 66",
      "Bea 2026-03-08 iron/1 swing 1 hip-sway 4",
      "Bea 2026-03-08 iron/1 swing 2 hinge n/m",
      "Bea 2026-03-15 driver/1 swing 1 hinge 70",
    ]);
    expect(planLines(fromWide)).toEqual(planLines(fromLong));
    expect([fromLong.form, fromWide.form]).toEqual(["long", "wide"]);
    expect([fromLong.rowsReady, fromLong.rowsTotal, fromWide.rowsReady]).toEqual([4, 4, 3]);
    expect(fromWide.summaries).toEqual([
      {
        alias: "Bea",
        isNew: "known",
        sessions: 2,
        swings: 3,
        readings: 4,
        firstDay: "2026-03-08",
        lastDay: "2026-03-15",
      },
    ]);
  });

  it("what was typed is kept sign by sign, and the reader is whoever imports unless the file says", () => {
    const { plan } = readFile(wide("Bea,2026-03-08,7-iron,1, 66.0 ,−4"));
    expect(plan?.sessions[0]?.session.reader).toBe("Wren");
    expect(plan?.sessions[0]?.session.swings[0]?.readings.map(({ typed, value }) => [typed, value])).toEqual([
      [" 66.0 ", 66],
      ["−4", -4],
    ]);
  });

  it("a blank cell is no reading, least of all nought", () => {
    const preview = readFile(wide("Bea,2026-03-08,7-iron,1,66,", "Bea,2026-03-08,7-iron,2,,"));
    expect(planLines(preview)).toEqual(["Bea 2026-03-08 iron/1 swing 1 hinge 66"]);
    expect(preview.notes).toMatchObject([{ code: "club-group-by-club" }, { code: "no-reading", rows: [3] }]);
  });

  it("the delimiter and decimal sign don't matter: the ; twin with decimal commas reads the same", () => {
    const plain = readFile(wide("Bea,2026-03-08,7-iron,1,66.5,4.25"));
    for (const sign of [";", "\t", "|"]) {
      const twin = readFile(
        wide("Bea,2026-03-08,7-iron,1,66.5,4.25").replaceAll(",", sign).replaceAll(".5", ",5").replaceAll(".25", ",25"),
      );
      expect(planLines(twin)).toEqual(planLines(plain));
      expect(codes(twin.notes)).toContain("decimal-comma");
    }
  });
});

describe("columns in sight", () => {
  it("unknown, blank, doubled and prototype headers are left out in sight and harm nothing", () => {
    const preview = readFile(
      "student,date,club,hinge,hinge,misc 2,,__proto__,constructor\nBea,2026-03-08,7-iron,66,99,a,b,c,d\n",
    );
    expect(preview.columns.map(({ header, field, why }) => [header, field, why])).toEqual([
      ["student", "alias", null],
      ["date", "day", null],
      ["club", "club", null],
      ["hinge", "fundamental", null],
      ["hinge", null, "doubled"],
      ["misc 2", null, "unknown"],
      ["", null, "blank"],
      ["__proto__", null, "unknown"],
      ["constructor", null, "unknown"],
    ]);
    expect(planLines(preview)).toEqual(["Bea 2026-03-08 iron/1 swing 1 hinge 66"]);
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });

  it("a header may carry its unit", () => {
    const preview = readFile("name;session date;club;wrist hinge (deg);hip sway, top (%)\nBea;2026-03-08;7i;66;4\n");
    expect(preview.columns.map(({ fundamentalId, unit }) => [fundamentalId, unit])).toEqual([
      [null, null],
      [null, null],
      [null, null],
      ["hinge", "deg"],
      ["hip-sway", "pct-stance"],
    ]);
  });

  it("a header near a fundamental's name is asked about and left out meanwhile", () => {
    const file = "student,date,club,hinge,hip swey\nBea,2026-03-08,7-iron,66,4\n";
    const asked = readFile(file);
    expect(asked.questions).toMatchObject([
      { id: "column:5", code: "column-fundamental", standing: "leave-out", rows: [2] },
    ]);
    expect(planLines(asked)).toHaveLength(1);
    expect(planLines(readFile(file, { "answer:column:5": "read-as-column" }))).toContain(
      "Bea 2026-03-08 iron/1 swing 1 hip-sway 4",
    );
  });

  it("tilt kept is worked out from two others and never read", () => {
    expect(readFile("student,date,club,hinge,tilt-kept\nBea,2026-03-08,7-iron,66,4\n").columns[4]).toMatchObject({
      why: "derived",
    });
    const preview = readFile(long("Bea,2026-03-08,7-iron,1,tilt-kept,4,deg"));
    expect(preview.plan).toBeNull();
    expect(preview.notes).toContainEqual(expect.objectContaining({ code: "derived-left-out", rows: [2] }));
  });
});

describe("whole files that hold nothing to read", () => {
  it.each([
    ["", "empty-file"],
    ["\n \n", "empty-file"],
    [WIDE, "headers-only"],
    ["student,date\nBea,2026-03-08\n", "no-readings-column"],
    ["student,club,hinge\nBea,7-iron,66\n", "no-date-column"],
    ["<!doctype html><p>", "not-a-csv"],
    ["%PDF-1.4", "not-a-csv"],
    [`${"a,".repeat(501)}b\n1\n`, "too-many-columns"],
  ])("%j is refused as %s, and nothing would be saved", (text, code) => {
    const preview = readFile(text);
    expect(codes(preview.issues)).toContain(code);
    expect(preview.plan).toBeNull();
    expect(sayAll(preview).every((sentence) => sentence.length > 0)).toBe(true);
  });
});

describe("a bad cell drops itself, never its row's good ones", () => {
  it.each([
    ["8 apples", "unknown-unit"],
    ["NaN", "not-finite"],
    ["Infinity", "not-finite"],
    ["1e400", "too-large"],
    ["1e-400", "too-small"],
    ["0x10", "not-a-number"],
    ["１２", "full-width"],
    ["wide", "not-a-number"],
    ["±2", "plus-minus"],
    ["9 cm", "other-unit"],
  ])("%s beside a good sway", (text, code) => {
    const preview = readFile(wide(`Bea,2026-03-08,7-iron,1,${text},4`));
    expect(planLines(preview)).toEqual(["Bea 2026-03-08 iron/1 swing 1 hip-sway 4"]);
    expect(preview.issues).toMatchObject([{ code, row: 2, rows: [2], column: "hinge", value: text }]);
    expect(preview.rowsReady).toBe(1);
  });

  it("the sentence says row, column, value and what to do", () => {
    const said = sayAll(readFile(wide("Bea,2026-03-08,7-iron,1,wide,4")));
    expect(said[0]).toBe(
      "Row 2, hinge: “wide” is not a number. Write digits only, for example 12.5; leave the cell blank where nothing was read.",
    );
  });

  it.each([
    ["Bea,2026-02-30,7-iron,1,66,4", "impossible-date"],
    ["Bea,2026-09-13,7-iron,1,66,4", "future-date"],
    ["Bea,2012-09-13,7-iron,1,66,4", "before-birth"],
    ["Bea,02/06/26,7-iron,1,66,4", "two-digit-year"],
    ["Bea,,7-iron,1,66,4", "date-missing"],
    ["Bea,soon,7-iron,1,66,4", "not-a-date"],
    [",2026-03-08,7-iron,1,66,4", "student-missing"],
    ["Be\u202ea,2026-03-08,7-iron,1,66,4", "hidden-mark"],
    ["Bea,2026-03-08,7-iron,one,66,4", "not-a-count"],
    ["Bea,2026-03-08,7-iron,1,6\u00006,4", "nul-sign"],
    ["Bea,2026-03-08,7-iron,1,66,5,4", "too-many-cells"],
    ['Bea,2026-03-08,7-iron,1,"66,4', "unclosed-quote"],
  ])("%j loses its readings, the other rows stay", (row, code) => {
    const preview = readFile(wide("Bea,2026-03-08,7-iron,2,70,5", row, "Bea,2026-03-09,7-iron,1,71,6"));
    expect(planLines(preview)).toHaveLength(4);
    expect(preview.issues.find((issue) => issue.code === code)).toMatchObject({ row: 3 });
    expect([preview.rowsReady, preview.restRows]).toEqual([2, [3]]);
    expect(sayAll(preview).length).toBeGreaterThan(0);
  });

  it("today is accepted, tomorrow is not", () => {
    expect(readFile(wide("Bea,2026-09-12,7-iron,1,66,4")).rowsReady).toBe(1);
    expect(readFile(wide("Bea,2026-09-13,7-iron,1,66,4")).rowsReady).toBe(0);
  });

  it("an unknown fundamental near to one is asked about, another is refused", () => {
    const file = long("Bea,2026-03-08,7-iron,1,hinje,66,deg", "Bea,2026-03-08,7-iron,2,spin rate,66,deg");
    const preview = readFile(file);
    expect(preview.questions).toMatchObject([{ id: "fundamental:hinje", rows: [2], args: { fundamental: "hinge" } }]);
    expect(preview.issues).toMatchObject([{ code: "unknown-fundamental", row: 3, value: "spin rate" }]);
    expect(planLines(readFile(file, { "answer:fundamental:hinje": "read-as-fundamental" }))).toHaveLength(1);
  });

  it("one fault in many rows is one entry with all its rows", () => {
    const rows = Array.from({ length: 40 }, (_, at) => `Bea,2026-03-08,7-iron,${at + 1},x,4`);
    const preview = readFile(wide(...rows));
    expect(preview.issues).toHaveLength(1);
    expect(preview.issues[0]).toMatchObject({ args: { count: 40, rows: "2–41" } });
  });
});
