import { describe, expect, it } from "vitest";
import { unitsFor } from "@/lib/ingest/column-choice";
import { codes, planLines, readFile } from "./import-setup";

const FILE = "who,when,stick,swing,angle a,hip sway\nBea,2026-03-08,7-iron,1,66,4\n";
const MAP = {
  "answer:map:1": "field:alias",
  "answer:map:2": "field:day",
  "answer:map:3": "field:club",
  "answer:map:5": "fundamental:hinge",
};

describe("what somebody says a column is", () => {
  it("makes a file readable whose heads nobody knows", () => {
    expect(readFile(FILE).plan).toBeNull();
    expect(planLines(readFile(FILE, MAP))).toEqual([
      "Bea 2026-03-08 iron/1 swing 1 hinge 66",
      "Bea 2026-03-08 iron/1 swing 1 hip-sway 4",
    ]);
  });

  it("holds before a guess: the guessed column of the same thing is left out in sight", () => {
    const preview = readFile("student,date,club,swing,hinge,old\nBea,2026-03-08,7-iron,1,66,70\n", {
      "answer:map:6": "fundamental:hinge",
    });
    expect(preview.columns.map(({ why }) => why)).toEqual([null, null, null, null, "doubled", null]);
    expect(planLines(preview)).toEqual(["Bea 2026-03-08 iron/1 swing 1 hinge 70"]);
  });

  it("can leave a column out, which says so", () => {
    const preview = readFile("student,date,club,swing,hinge,hip sway\nBea,2026-03-08,7-iron,1,66,4\n", {
      "answer:map:6": "leave-out",
    });
    expect(preview.columns[5]).toMatchObject({ field: null, why: "chosen", choice: "leave-out" });
    expect(planLines(preview)).toHaveLength(1);
  });

  it("what names nothing known is passed over", () => {
    for (const said of ["fundamental:nothing", "field:nothing", "x", "sd:", "fundamental:__proto__"])
      expect(planLines(readFile(FILE, { ...MAP, "answer:map:5": said }))).toEqual([
        "Bea 2026-03-08 iron/1 swing 1 hip-sway 4",
      ]);
  });

  it("a column that was chosen raises no question about its head", () => {
    const file = "student,date,club,hinge,hip swey\nBea,2026-03-08,7-iron,66,4\n";
    expect(codes(readFile(file).questions)).toContain("column-fundamental");
    expect(readFile(file, { "answer:map:5": "leave-out" }).questions).toEqual([]);
  });

  it("long files too: the columns of fundamental and value can be pointed at", () => {
    const file = "student,date,club,swing,what,how much\nBea,2026-03-08,7-iron,1,hinge,66\n";
    const preview = readFile(file, { "answer:map:5": "field:fundamental", "answer:map:6": "field:value" });
    expect([preview.form, planLines(preview)]).toEqual(["long", ["Bea 2026-03-08 iron/1 swing 1 hinge 66"]]);
  });
});

describe("units of a column", () => {
  it("are those that can become the fundamental's own, its own first", () => {
    expect([unitsFor("deg"), unitsFor("pct-stance"), unitsFor("pct-span")]).toEqual([
      ["deg", "rad"],
      ["pct-stance", "fraction", "cm", "mm", "inch"],
      ["pct-span", "fraction"],
    ]);
  });

  it("chosen radians: 66° is 1.1519 rad, turned with a note and no question", () => {
    const preview = readFile("student,date,club,swing,hinge\nBea,2026-03-08,7-iron,1,1.1519\n", {
      "answer:map-unit:5": "rad",
    });
    expect(preview.questions).toEqual([]);
    expect(preview.plan?.sessions[0]?.session.swings[0]?.readings[0]?.value).toBeCloseTo(66, 2);
    expect(preview.notes.find(({ code }) => code === "converted")?.rows).toEqual([2]);
  });

  it("a head that says radians can be overruled: the value stays as typed", () => {
    const preview = readFile("student,date,club,swing,hinge (rad)\nBea,2026-03-08,7-iron,1,66\n", {
      "answer:map-unit:5": "deg",
    });
    expect(planLines(preview)).toEqual(["Bea 2026-03-08 iron/1 swing 1 hinge 66"]);
  });

  it("centimetres still ask for the stance width where the file has none", () => {
    const file = "student,date,club,swing,hip sway\nBea,2026-03-08,7-iron,1,4\n";
    expect(codes(readFile(file, { "answer:map-unit:5": "cm" }).questions)).toEqual(["other-unit-stance"]);
  });

  it("one unit for a column of several fundamentals turns only those that can be written in it", () => {
    const file =
      "student,date,club,swing,fundamental,value\nBea,2026-03-08,7-iron,1,hinge,1.1519\nBea,2026-03-08,7-iron,1,hip-sway,4\n";
    const values = readFile(file, { "answer:map-unit:6": "rad" }).plan?.sessions[0]?.session.swings[0]?.readings;
    expect(values?.map(({ value }) => Number(value?.toFixed(2)))).toEqual([66, 4]);
  });
});
