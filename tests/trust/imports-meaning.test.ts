import { describe, expect, it } from "vitest";
import { codes, planLines, readFile, sayAll, TODAY } from "../lib/ingest/import-setup";
import { countCases } from "./count-cases";

const file = (heads: string, ...rows: readonly string[]) => `student,date,club,swing,${heads}\n${rows.join("\n")}\n`;

describe("I6: days", () => {
  const ran = countCases("I6", 20);
  const days = (...texts: readonly string[]) =>
    readFile(file("hinge", ...texts.map((text, at) => `Bea,${text},7-iron,${at + 1},66`)));
  const read = (preview: ReturnType<typeof readFile>) =>
    (preview.plan?.sessions ?? []).map(({ session }) => session.day);

  it.each([
    [["03/04/2026"], "date-order"],
    [["03.04.2026", "05.06.2026"], "date-order"],
    [["13/04/2026", "04/13/2026", "03/04/2026"], "date-order"],
    [["46089"], "day-number"],
    [["46089.5"], "day-number"],
  ])("%j is asked once a file", (texts, id) => {
    ran.add();
    expect(days(...texts).questions.map((question) => question.id)).toEqual([id]);
  });
  it.each([
    [
      ["03/04/2026", "25/03/2026"],
      ["2026-03-25", "2026-04-03"],
    ],
    [
      ["03/04/2026", "03/25/2026"],
      ["2026-03-04", "2026-03-25"],
    ],
    [["2026-03-08"], ["2026-03-08"]],
    [["2026/3/8"], ["2026-03-08"]],
    [["20260308"], ["2026-03-08"]],
    [["8 Mar 2026"], ["2026-03-08"]],
    [['"March 8, 2026"'], ["2026-03-08"]],
    [["2026-03-08 09:30"], ["2026-03-08"]],
    [["29 Feb 2024"], ["2024-02-29"]],
    [[TODAY], [TODAY]],
    [["04/04/2026"], ["2026-04-04"]],
  ])("%j is read, settled by itself or by other rows", (texts, expected) => {
    ran.add();
    expect(read(days(...texts))).toEqual(expected);
  });
  it.each([
    ["29 Feb 2026", "impossible-date"],
    ["2026-02-30", "impossible-date"],
    ["31/04/2026", "impossible-date"],
    ["03/04/26", "two-digit-year"],
    ["2026-09-13", "future-date"],
    ["soon", "not-a-date"],
    ["", "date-missing"],
  ])("%j is a problem: %s", (text, code) => {
    ran.add();
    const preview = days(text);
    expect([codes(preview.issues), preview.plan]).toEqual([[code], null]);
  });
  it.each([
    ["from-1900", "2026-03-08"],
    ["from-1904", "2030-03-09"],
  ])("a count of days %s", (option, day) => {
    ran.add();
    const preview = readFile(file("hinge", "Bea,46089,7-iron,1,66"), { "answer:day-number": option });
    expect(preview.notes.concat().some(({ args }) => args.taken === day)).toBe(true);
    expect(read(preview)).toEqual(day > TODAY ? [] : [day]);
  });
});

describe("I7: units", () => {
  const ran = countCases("I7", 12);
  const values = (head: string, list: readonly (number | string)[]) =>
    file(head, ...list.map((value, at) => `Bea,2026-03-08,7-iron,${at + 1},${value}`));
  const rad = [1.15, 1.17, 1.2, 1.1, 1.22, 1.19];
  it.each([
    ["radians for all of a fundamental", values("hinge", rad), "small-all", "rad"],
    ["one in radians among degrees", values("hinge", [66, 67, 1.17, 65, 68, 66]), "small-some", "rad"],
    ["fractions for %", values("hip-sway", [0.05, 0.08, 0.11, -0.02, 0.04, 0.07]), "small-all", "fraction"],
    ["millimetres for % of stance", values("hip-sway", [90, 80, -110, 95, 120, 100]), "out-of-range-many", "mm"],
    ["ten times too much", values("hinge", [660, 670, 650, 655, 640]), "out-of-range-many", "tenths"],
    ["a quarter out of range", values("hinge", [66, 66, 66, 400]), "out-of-range", ""],
    [
      "two of ten out of range",
      values("hinge", [66, 66, 67, 68, 66, 66, 66, 66, 400, 500]),
      "out-of-range-many",
      "tenths",
    ],
  ])("%s: stops, naming the likely unit", (_, text, code, unit) => {
    ran.add();
    const preview = readFile(text);
    const question = preview.questions.find((each) => each.code === code);
    expect(question?.code).toBe(code);
    if (unit !== "") expect([question?.args.unit, question?.args.likely]).toContain(unit);
    expect(codes(preview.notes)).not.toContain("converted");
    expect(sayAll(preview).length).toBeGreaterThan(0);
  });
  it.each([
    ["centimetres said in the head", values("hip-sway (cm)", [4]), "other-unit-stance"],
    ["radians said in the cell", values("hinge", ["1.15 rad"]), "other-unit"],
    ["inches said in the cell", values("hip-sway", ["2 in"]), "other-unit-stance"],
  ])("%s: nothing is converted unseen", (_, text, code) => {
    ran.add();
    const preview = readFile(text);
    expect([preview.questions[0]?.code, preview.plan]).toEqual([code, null]);
  });
  it.each([
    ["chosen for the column", { "answer:map-unit:5": "rad" }, "hinge"],
    ["said in the head and answered", { "answer:unit:hinge:rad": "convert" }, "hinge (rad)"],
  ])("%s: converted with a note for every row", (_, answers, head) => {
    ran.add();
    const preview = readFile(values(head, rad), answers as Record<string, string>);
    expect(preview.notes.find(({ code }) => code === "converted")?.rows).toEqual([2, 3, 4, 5, 6, 7]);
    expect(preview.plan?.sessions[0]?.session.swings[0]?.readings[0]?.value).toBeCloseTo(65.8901, 3);
  });
});

describe("I8: signs of left-handers", () => {
  const ran = countCases("I8", 8);
  const leo = (sign: number) =>
    Array.from({ length: 6 }, (_, at) => `Leo,2026-03-08,7-iron,${at + 1},${sign * (5 + at)}`);
  const asked = (text: string, answers = {}) => readFile(text, answers).questions.map(({ code }) => code);
  it.each([
    ["left-handers", file("setup-tilt", ...leo(1)), {}, ["left-sign"]],
    ["left-handers against their goals", file("setup-tilt", ...leo(-1)), {}, ["left-sign-contrary"]],
    ["right-handers", file("setup-tilt", "Bea,2026-03-08,7-iron,1,6"), {}, []],
    ["a fundamental that no mirror turns", file("hinge", "Leo,2026-03-08,7-iron,1,66"), {}, []],
    ["the file says", file("setup-tilt,sign", "Leo,2026-03-08,7-iron,1,6,picture"), {}, []],
  ])("%s: asked where it matters and is not said", (_, text, answers, expected) => {
    ran.add();
    expect(asked(text, answers)).toEqual(expected);
  });
  it("both hands in one file: only the left-hander's waits, and only that is turned", () => {
    ran.add(3);
    const text = file("setup-tilt", "Leo,2026-03-08,7-iron,1,-6", "Bea,2026-03-08,7-iron,1,6");
    expect(planLines(readFile(text))).toEqual(["Bea 2026-03-08 iron/1 swing 1 setup-tilt 6"]);
    const lines = (option: string) => planLines(readFile(text, { "answer:left-sign": option }));
    expect(lines("picture")).toEqual([
      "Bea 2026-03-08 iron/1 swing 1 setup-tilt 6",
      "Leo 2026-03-08 iron/1 swing 1 setup-tilt 6",
    ]);
    expect(lines("neutral")).toEqual([
      "Bea 2026-03-08 iron/1 swing 1 setup-tilt 6",
      "Leo 2026-03-08 iron/1 swing 1 setup-tilt -6",
    ]);
  });
});

describe("I9: letters that mislead", () => {
  const ran = countCases("I9", 16);
  const alias = (name: string) => readFile(file("hinge", `${name},2026-03-08,7-iron,1,66`));
  it.each([
    "Be\u202ea",
    "\u202eaeB",
    "Be\u200ba",
    "\u200fBea",
    "Be\u2066a",
    "B\ufeffea",
    "Be\ufffda",
    "Be\u0007a",
    "B\u0000ea",
  ])("%j as a name is refused, the mark shown", (name) => {
    ran.add();
    const preview = alias(name);
    expect(preview.plan).toBeNull();
    expect(preview.issues.length).toBeGreaterThan(0);
    expect(sayAll(preview).join(" ")).toMatch(/‹U\+[0-9A-F]{4}›|NUL/);
  });
  it.each([
    ["Zoe\u0308", "Zoë"],
    ["Zoë", "Zoë"],
    ["ZOË", "Zoë"],
    [" Zoë ", "Zoë"],
  ])("%j is Zoë, one student", (name, known) => {
    ran.add();
    expect(alias(name).plan?.sessions.map((session) => session.alias)).toEqual([known]);
  });
  it.each(["🏌️", "👩‍👧", "שרה", "سارة"])("%j stays as it is", (name) => {
    ran.add();
    expect(alias(name).questions[0]).toMatchObject({ args: { value: name } });
  });
});
