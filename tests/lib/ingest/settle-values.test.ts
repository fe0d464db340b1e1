import { describe, expect, it } from "vitest";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { codes, LEO, planLines, readFile, silentRows } from "./import-setup";

const WIDE = "student,date,club,swing,hinge,hip sway\n";
const wide = (...rows: readonly string[]) => WIDE + rows.join("\n");
const question = (preview: ImportPreview, id: string) => preview.questions.find((asked) => asked.id === id);

/** Rows of one wide column, a swing each. */
const column = (header: string, values: readonly (string | number)[], alias = "Bea", extra = "") =>
  `student,date,club,swing,${header}\n${values.map((value, at) => `${alias},2026-03-08,7-iron,${at + 1},${value}${extra}`).join("\n")}\n`;

describe("values", () => {
  it("8o is asked about, and waits", () => {
    const file = wide("Bea,2026-03-08,7-iron,1,8o,4");
    expect(question(readFile(file), "look-alike")).toMatchObject({ rows: [2], args: { value: "8o", taken: "80" } });
    expect(planLines(readFile(file))).toEqual(["Bea 2026-03-08 iron/1 swing 1 hip-sway 4"]);
    expect(planLines(readFile(file, { "answer:look-alike": "read-as" }))).toContain(
      "Bea 2026-03-08 iron/1 swing 1 hinge 80",
    );
  });
  it("a lone 1,234 is asked about; decimal commas elsewhere settle it, with a note", () => {
    const lone = column("hinge", ['"1,234"']);
    expect(question(readFile(lone), "comma")).toMatchObject({ rows: [2] });
    expect(planLines(readFile(lone, { "answer:comma": "decimal", "answer:small:hinge": "keep" }))[0]).toContain(
      "hinge 1.234",
    );
    const settled = readFile(column("hip sway", ['"1,234"', '"5,5"']));
    expect(settled.questions).toEqual([]);
    expect(planLines(settled)[0]).toContain("hip-sway 1.234");
  });
  it("a point with three digits is asked about only in a file of decimal commas", () => {
    expect(readFile(column("hip sway", ["1.234"])).questions).toEqual([]);
    expect(question(readFile(column("hip sway", ["1.234", '"5,5"'])), "point")).toMatchObject({ rows: [2] });
  });
  it("centimetres become % of stance only on an answer: 9 cm of 45 cm is 20 %", () => {
    const file = wide("Bea,2026-03-08,7-iron,1,66,9 cm");
    expect(question(readFile(file), "unit:hip-sway:cm")).toMatchObject({ code: "other-unit-stance", rows: [2] });
    expect(planLines(readFile(file))).toEqual(["Bea 2026-03-08 iron/1 swing 1 hinge 66"]);
    const answer = { "answer:unit:hip-sway:cm": "convert", "answer-stanceWidth:unit:hip-sway:cm": "45" };
    expect(planLines(readFile(file, answer))).toContain("Bea 2026-03-08 iron/1 swing 1 hip-sway 20");
    const wrong = readFile(file, { ...answer, "answer-stanceWidth:unit:hip-sway:cm": "4.5" });
    expect(question(wrong, "unit:hip-sway:cm")).toMatchObject({ problem: "answer-stance-width" });
    expect(planLines(wrong)).toHaveLength(1);
  });
  it("a row's own stance width needs no typing: 9 of 40 is 22.5", () => {
    const file = "student,date,club,swing,hip sway (cm),stance width\nBea,2026-03-08,7-iron,1,9,40\n";
    expect(question(readFile(file), "unit:hip-sway:cm")?.options[0]?.fields).toEqual([]);
    expect(planLines(readFile(file, { "answer:unit:hip-sway:cm": "convert" }))).toEqual([
      "Bea 2026-03-08 iron/1 swing 1 hip-sway 22.5",
    ]);
  });
  it("radians named by the file are turned only on an answer", () => {
    const file = column("hinge (rad)", ["1.5"]);
    expect(readFile(file).plan).toBeNull();
    expect(
      readFile(file, { "answer:unit:hinge:rad": "convert" }).plan?.sessions[0]?.session.swings[0]?.readings[0]?.value,
    ).toBeCloseTo(85.94, 2);
  });
  it("radians among degrees are found where nobody has so few degrees; a whole column of them anywhere", () => {
    expect(question(readFile(column("hinge", [66, 1.2, 70, 71, 72, 70])), "small:hinge")).toMatchObject({
      code: "small-some",
      rows: [3],
    });
    const tilt = column("setup-tilt", [0.11, 0.12, 0.09, 0.13, 0.12]);
    expect(question(readFile(tilt), "small:setup-tilt")).toMatchObject({ code: "small-all", args: { unit: "rad" } });
    expect(readFile(tilt).plan).toBeNull();
    expect(readFile(tilt, { "answer:small:setup-tilt": "keep" }).rowsReady).toBe(5);
    expect(
      question(readFile(column("ball-position", [0.55, 0.52, 0.58, 0.61, 0.5])), "small:ball-position"),
    ).toMatchObject({ args: { unit: "fraction" } });
  });
  it("one value out of range among many waits alone; over 5 % of them stop all, naming the likely unit", () => {
    const one = readFile(column("hip sway", [...Array.from({ length: 29 }, () => 4), 75]));
    expect(question(one, "range:hip-sway")).toMatchObject({ code: "out-of-range", rows: [31] });
    expect(one.rowsReady).toBe(29);
    const many = column("hip sway,stance width", [4, 5, 6, 90, 95, 120, 4, 3], "Bea", ",45");
    expect(question(readFile(many), "range:hip-sway")).toMatchObject({
      code: "out-of-range-many",
      rows: [5, 6, 7],
      args: { likely: "mm" },
    });
    expect([readFile(many).rowsReady, silentRows(readFile(many))]).toEqual([0, []]);
    expect(readFile(many, { "answer:range:hip-sway": "leave-out" }).rowsReady).toBe(5);
    expect(readFile(many, { "answer:range:hip-sway": "keep" }).rowsReady).toBe(8);
    expect(planLines(readFile(many, { "answer:range:hip-sway": "scale" }))[3]).toBe(
      "Bea 2026-03-08 iron/1 swing 4 hip-sway 20",
    );
  });
});

describe("left-handers' signs", () => {
  const neutral = column("setup-tilt", [6, 7, 5, 6, 7, 6], "Leo");
  it("is asked once; the left-handers' mirrored values wait for the answer, which is noted", () => {
    const preview = readFile(neutral);
    expect(question(preview, "left-sign")).toMatchObject({ standing: null, rows: [2, 3, 4, 5, 6, 7] });
    expect(preview.rowsReady).toBe(0);
    expect(preview.waitingRows).toEqual([2, 3, 4, 5, 6, 7]);
    const answered = readFile(neutral, { "answer:left-sign": "neutral" });
    expect(answered.rowsReady).toBe(6);
    expect(codes(answered.notes)).toContain("sign-taken-neutral");
  });
  it("nothing is asked where no left-hander's mirrored value is in the file", () => {
    expect(question(readFile(column("setup-tilt", [6, 7], "Bea")), "left-sign")).toBeUndefined();
  });
  it("picture signs are turned on an answer, what was typed stays", () => {
    const reading = readFile(neutral, { "answer:left-sign": "picture" }).plan?.sessions[0]?.session.swings[0]
      ?.readings[0];
    expect(reading).toMatchObject({ value: -6, typed: "6", signRule: "picture" });
  });
  it("values against the goals are asked about before anything is saved", () => {
    const file = column("setup-tilt", [-6, -7, -5, -6, -7, -6], "Leo");
    expect(question(readFile(file), "left-sign")).toMatchObject({ code: "left-sign-contrary", standing: null });
    expect(readFile(file).plan).toBeNull();
    expect(
      readFile(file, { "answer:left-sign": "picture" }).plan?.sessions[0]?.session.swings[0]?.readings[0]?.value,
    ).toBe(6);
  });
  it("a sign column needs no question, and turns nothing that a mirror leaves alone", () => {
    const file =
      "student,date,club,swing,setup-tilt,hinge,sign\nLeo,2026-03-08,7-iron,1,-6,80,picture\nBea,2026-03-08,7-iron,1,-6,80,picture\n";
    const preview = readFile(file);
    expect(preview.questions).toEqual([]);
    expect(planLines(preview)).toEqual([
      "Bea 2026-03-08 iron/1 swing 1 setup-tilt -6",
      "Bea 2026-03-08 iron/1 swing 1 hinge 80",
      "Leo 2026-03-08 iron/1 swing 1 setup-tilt 6",
      "Leo 2026-03-08 iron/1 swing 1 hinge 80",
    ]);
  });
  it("the hand is the student's: a file that says otherwise is noted and not followed", () => {
    const preview = readFile("student,hand,date,club,swing,setup-tilt\nLeo,right,2026-03-08,7-iron,1,6\n");
    expect(codes(preview.notes)).toContain("hand-on-file-kept");
    expect(question(preview, "left-sign")).toMatchObject({ args: { alias: LEO.alias } });
  });
});
