import { describe, expect, it } from "vitest";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { mergeGroups } from "@/lib/domain/regroup-clubs";
import type { ImportPreview } from "@/lib/ingest/import-preview";
import { codes, planLines, readFile, sayAll, silentRows } from "./import-setup";

const WIDE = "student,date,club,swing,hinge,hip sway\n";
const wide = (...rows: readonly string[]) => WIDE + rows.join("\n");
const question = (preview: ImportPreview, id: string) => preview.questions.find((asked) => asked.id === id);
const days = (preview: ImportPreview) => preview.plan?.sessions.map(({ session }) => session.day);

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
  it("a slip in the name of another new student is asked about, and shares that one's answer", () => {
    const rows = [1, 2, 3].map((swing) => `Nia,2026-03-08,7-iron,${swing},66,4`);
    const file = wide(...rows, "Nai,2026-03-08,7-iron,4,67,4");
    expect(question(readFile(file), "student:nai")?.options[0]).toMatchObject({ id: "as-nia", args: { alias: "Nia" } });
    expect(readFile(file, { "answer:student:nai": "as-nia" }).plan).toBeNull();
    const whole = readFile(file, {
      "answer:student:nia": "new-right",
      "answer-givenBy:student:nia": "father",
      "answer:student:nai": "as-nia",
    });
    expect(whole.plan?.newStudents.map(({ alias }) => alias)).toEqual(["Nia"]);
    expect(whole.summaries).toMatchObject([{ alias: "Nia", sessions: 1, swings: 4 }]);
  });
  it("a new student needs a hand and who gave consent; without it the rows wait", () => {
    const file = wide("Ida,2026-03-08,7-iron,1,66,4");
    const lacking = readFile(file, { "answer:student:ida": "new-left" });
    expect(question(lacking, "student:ida")).toMatchObject({ answer: "new-left", problem: "answer-incomplete" });
    expect(lacking.plan).toBeNull();
    const whole = readFile(file, {
      "answer:student:ida": "new-left",
      "answer-givenBy:student:ida": "her mother",
      "answer:left-sign": "neutral",
    });
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
  it("in an academy that merged woods and hybrids, a file's words still mean what they say, and questions offer its groups", () => {
    const merged = mergeGroups(SHORT_LIST, { first: "hybrid", second: "wood", name: "Long game", goalsOf: "second" });
    if (merged.kind !== "ok") throw new Error("not merged");
    const file =
      "student,date,club,club group,swing,hinge\nBea,2026-03-08,4h,,1,66\nBea,2026-03-09,,Long game,1,66\nBea,2026-03-10,stick,,1,66\nBea,2026-03-11,3-wood,long GAME,1,66\n";
    const change = { grouping: merged.grouping };
    const preview = readFile(file, {}, change);
    expect(question(preview, "club:stick")?.options.map(({ id }) => id)).toEqual([
      "short-iron",
      "iron",
      "wood-long-game",
      "driver",
      "leave-out",
    ]);
    expect(preview.notes.find(({ code }) => code === "club-group-by-club")?.args.group).toBe("wood-long-game");
    expect(codes(preview.notes)).not.toContain("club-group-kept");
    const { plan } = readFile(file, { "answer:club:stick": "wood-long-game" }, change);
    expect(plan?.sessions.map(({ session }) => session.clubGroup)).toEqual([
      "hybrid",
      "wood-long-game",
      "wood-long-game",
      "wood",
    ]);
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
