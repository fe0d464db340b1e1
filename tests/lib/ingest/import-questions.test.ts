import { describe, expect, it } from "vitest";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { codes, LEO, planLines, readFile, sayAll, silentRows } from "./import-setup";

const WIDE = "student,date,club,swing,hinge,hip sway\n";
const wide = (...rows: readonly string[]) => WIDE + rows.join("\n");
const question = (preview: ImportPreview, id: string) => preview.questions.find((asked) => asked.id === id);
const days = (preview: ImportPreview) => preview.plan?.sessions.map(({ session }) => session.day);

/** Rows of one wide column, a swing each. */
const column = (header: string, values: readonly (string | number)[], alias = "Bea", extra = "") =>
  `student,date,club,swing,${header}\n${values.map((value, at) => `${alias},2026-03-08,7-iron,${at + 1},${value}${extra}`).join("\n")}\n`;

describe("ambiguous dates", () => {
  const file = wide("Bea,03/04/2026,7-iron,1,66,4", "Bea,05/04/2026,7-iron,1,67,5", "Bea,2026-06-01,7-iron,1,68,5");
  it("are asked once a file; the other rows are ready meanwhile", () => {
    const preview = readFile(file);
    expect(preview.questions).toMatchObject([{ id: "date-order", rows: [2, 3], answer: null }]);
    expect([preview.rowsReady, preview.restRows]).toEqual([1, [2, 3]]);
  });
  it("one answer settles every row", () => {
    expect(days(readFile(file, { "answer:date-order": "day-first" }))).toEqual([
      "2026-04-03",
      "2026-04-05",
      "2026-06-01",
    ]);
    expect(days(readFile(file, { "answer:date-order": "month-first" }))).toEqual([
      "2026-03-04",
      "2026-05-04",
      "2026-06-01",
    ]);
    const left = readFile(file, { "answer:date-order": "leave-out" });
    expect(days(left)).toEqual(["2026-06-01"]);
    expect(left.notes).toContainEqual(expect.objectContaining({ code: "left-out", rows: [2, 3] }));
  });
  it("other rows settle them: a 25th tells the order, and every row read so is noted", () => {
    const preview = readFile(wide("Bea,03/04/2026,7-iron,1,66,4", "Bea,25/04/2026,7-iron,1,67,5"));
    expect(preview.questions).toEqual([]);
    expect(days(preview)).toEqual(["2026-04-03", "2026-04-25"]);
    expect(preview.notes).toContainEqual(expect.objectContaining({ code: "read-day-first", rows: [2] }));
  });
  it("rows in both orders settle nothing", () =>
    expect(
      readFile(wide("Bea,03/04/2026,7-iron,1,66,4", "Bea,25/04/2026,7-iron,1,67,5", "Bea,04/25/2026,7-iron,1,67,5"))
        .questions,
    ).toMatchObject([{ code: "date-order-mixed", rows: [2] }]));
  it("a spreadsheet's counts of days are asked about, 1900 or 1904", () => {
    const counts = wide("Bea,46089,7-iron,1,66,4");
    expect(question(readFile(counts), "day-number")).toMatchObject({ rows: [2] });
    expect(days(readFile(counts, { "answer:day-number": "from-1900" }))).toEqual(["2026-03-08"]);
  });
});

describe("students", () => {
  it("a name near to a known one is asked about, the known one first", () => {
    const file = wide("Beah,2026-03-08,7-iron,1,66,4");
    const asked = question(readFile(file), "student:beah");
    expect(asked).toMatchObject({ code: "student-close", rows: [2], args: { alias: "Bea" } });
    expect(asked?.options.map(({ id }) => id)).toEqual(["is-s1", "new-right", "new-left", "leave-out"]);
    expect(planLines(readFile(file, { "answer:student:beah": "is-s1" }))[0]).toContain("Bea 2026-03-08");
  });
  it("a new student needs a hand and who gave consent; without it the rows wait", () => {
    const file = wide("Ida,2026-03-08,7-iron,1,66,4");
    const lacking = readFile(file, { "answer:student:ida": "new-left" });
    expect(question(lacking, "student:ida")).toMatchObject({ answer: "new-left", problem: "answer-incomplete" });
    expect(lacking.plan).toBeNull();
    const whole = readFile(file, { "answer:student:ida": "new-left", "answer-givenBy:student:ida": "her mother" });
    expect(whole.plan?.newStudents).toEqual([
      { alias: "Ida", hand: "left", birthYear: null, consentGivenBy: "her mother" },
    ]);
    expect(whole.summaries).toMatchObject([{ alias: "Ida", isNew: "new", readings: 2 }]);
  });
  it("hand and birth year in the file come with the new student", () => {
    const file = "student,hand,born,date,club,hinge\nIda,L,2014,2026-03-08,7-iron,66\n";
    expect(question(readFile(file), "student:ida")?.options.map(({ id }) => id)).toEqual(["new-left", "leave-out"]);
    const { plan } = readFile(file, { "answer:student:ida": "new-left", "answer-givenBy:student:ida": "father" });
    expect(plan?.newStudents[0]).toMatchObject({ hand: "left", birthYear: 2014 });
  });
  it("a student without consent is asked about once, and the consent comes back beside the plan", () => {
    const file = wide("Uma,2026-03-08,7-iron,1,66,4", "Uma,2026-03-09,7-iron,1,66,4");
    expect(question(readFile(file), "consent:s4")).toMatchObject({ rows: [2, 3] });
    expect(readFile(file).plan).toBeNull();
    const agreed = readFile(file, { "answer:consent:s4": "on-paper", "answer-givenBy:consent:s4": "father" });
    expect(agreed.consents).toEqual([{ studentId: "s4", alias: "Uma", givenBy: "father" }]);
    expect(agreed.rowsReady).toBe(2);
  });
  it("without a student column the file is one student's, and the question says whose", () => {
    const file = "date,club,hinge\n2026-03-08,7-iron,66\n";
    expect(question(readFile(file), "whose-file")?.options.map(({ id }) => id)).toEqual(["s1", "s2", "s3", "s4"]);
    expect(planLines(readFile(file, { "answer:whose-file": "s1" }))).toHaveLength(1);
    expect(codes(readFile(file, {}, { students: [] }).issues)).toEqual(["no-student-column"]);
  });
  it("thousands of unknown names are not thousands of questions", () => {
    const preview = readFile(wide(...Array.from({ length: 400 }, (_, at) => `Nobody ${at},2026-03-08,7-iron,1,66,4`)));
    expect(preview.questions).toHaveLength(50);
    expect(silentRows(preview)).toEqual([]);
  });
});

describe("clubs and circumstances", () => {
  it("a club's name gives its group, with a note", () =>
    expect(
      readFile(
        wide(
          ...["7-iron", "9i", "PW", "3-wood", "4 hybrid", "Driver"].map(
            (club, at) => `Bea,2026-03-0${at + 1},${club},1,66,4`,
          ),
        ),
      ).plan?.sessions.map(({ session }) => session.clubGroup),
    ).toEqual(["iron", "short-iron", "short-iron", "wood", "hybrid", "driver"]));
  it("a club that nobody knows is one question; no club at all is one question", () => {
    const file = wide("Bea,2026-03-08,stick,1,66,4", "Bea,2026-03-09,,1,66,4");
    const preview = readFile(file);
    expect([question(preview, "club:stick")?.rows, question(preview, "club-group")?.rows]).toEqual([[2], [3]]);
    const { plan } = readFile(file, { "answer:club:stick": "wood", "answer:club-group": "driver" });
    expect(plan?.sessions.map(({ session }) => session.clubGroup)).toEqual(["wood", "driver"]);
  });
  it("a blank club on a day with one group is that group's, with a note", () => {
    const preview = readFile(wide("Bea,2026-03-08,7-iron,1,66,4", "Bea,2026-03-08,,2,67,4"));
    expect([preview.questions, preview.plan?.sessions.length]).toEqual([[], 1]);
    expect(codes(preview.notes)).toContain("club-group-by-day");
  });
  it("blank circumstances beside an aided row of the day are asked about, never guessed", () => {
    const file =
      "student,date,club,swing,hinge,circumstance\nBea,2026-03-08,7-iron,1,66,aid in view\nBea,2026-03-08,7-iron,2,67,\nBea,2026-03-09,7-iron,1,67,\n";
    expect(question(readFile(file), "circumstance-blank")).toMatchObject({ rows: [3] });
    expect(
      readFile(file, { "answer:circumstance-blank": "as-others" }).plan?.sessions.map(
        ({ session }) => session.circumstance,
      ),
    ).toEqual(["aid-in-view", "unaided"]);
    expect(question(readFile(file.replace("aid in view", "half aided")), "circumstance:half~20.aided")).toMatchObject({
      rows: [2],
    });
  });
});

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
  it("the catalogue's rule stands, noted, and is asked once", () => {
    const preview = readFile(neutral);
    expect(question(preview, "left-sign")).toMatchObject({ standing: "neutral", rows: [2, 3, 4, 5, 6, 7] });
    expect(preview.rowsReady).toBe(6);
    expect(codes(preview.notes)).toContain("sign-taken-neutral");
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

describe("the same swing twice", () => {
  it("a row equal in every cell is kept once, with a note", () => {
    const row = "Bea,2026-03-08,7-iron,1,66,4";
    const preview = readFile(wide(row, "Bea,2026-03-08,7-iron,2,67,4", row));
    expect([preview.rowsReady, preview.restRows, preview.questions]).toEqual([2, [4], []]);
    expect(preview.notes).toContainEqual(expect.objectContaining({ code: "duplicate-row", rows: [4] }));
  });
  it("two values for one swing are asked about, and both wait", () => {
    const file = wide("Bea,2026-03-08,7-iron,1,66,4", "Bea,2026-03-08,7-iron,1,68,4");
    expect(question(readFile(file), "same-swing")).toMatchObject({ rows: [2, 3] });
    expect(planLines(readFile(file))).toEqual(["Bea 2026-03-08 iron/1 swing 1 hip-sway 4"]);
    const hinge = (choice: string) =>
      planLines(readFile(file, { "answer:same-swing": choice })).filter((line) => line.includes("hinge"));
    expect(hinge("keep-first")).toEqual(["Bea 2026-03-08 iron/1 swing 1 hinge 66"]);
    expect(hinge("keep-last")).toEqual(["Bea 2026-03-08 iron/1 swing 1 hinge 68"]);
    expect(hinge("leave-out")).toEqual([]);
  });
});

describe("answers", () => {
  const file = wide("Beah,03/04/2026,stick,1,8o,9 cm", "Leo,2026-03-08,,1,1e400,4", "Uma,46089,7-iron,1,66,99");
  it("an answer to nothing, an option that is not offered and a prototype name change nothing", () => {
    const plain = readFile(file);
    const strange = readFile(file, {
      "answer:nothing": "yes",
      "answer:date-order": "sideways",
      "answer:__proto__": "x",
      "answer-__proto__:date-order": "x",
      answer: "x",
    });
    expect(strange).toEqual(plain);
  });
  it("every question comes with the row count first, and all of it can be said", () => {
    const preview = readFile(file);
    const counts = preview.questions.map(({ rows }) => rows.length);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
    expect(sayAll(preview).filter((sentence) => /[{}]|undefined|NaN(?! )/.test(sentence))).toEqual([]);
  });
});
