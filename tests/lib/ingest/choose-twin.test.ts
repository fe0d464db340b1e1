import { describe, expect, it } from "vitest";
import type { KnownStudent } from "@/lib/ingest/import-preview";
import { BEA, codes, planLines, readFile, sayAll } from "./import-setup";

const ari: KnownStudent = { id: "a1", alias: "Ari", hand: "right", birthYear: 2014, consent: "given", coach: "Wren" };
const other: KnownStudent = { ...ari, id: "a2", birthYear: null, coach: "Lark" };
const students = [BEA, ari, other];
const file = (...names: string[]) =>
  `student,date,club,swing,hinge\n${names.map((name, at) => `${name},2026-03-0${at + 1},7-iron,1,66`).join("\n")}\n`;

describe("an alias that two coaches' students bear", () => {
  it("is asked about, each told by coach and year; nothing of it is saved before", () => {
    const preview = readFile(file("Ari", "Bea"), {}, { students });
    const [question] = preview.questions;
    expect(question).toMatchObject({ id: "which:ari", rows: [2] });
    expect(question?.options.map(({ id }) => id)).toEqual(["is-a1", "is-a2", "leave-out"]);
    expect(sayAll(preview)).toEqual(expect.arrayContaining(["Ari, with Wren, born 2014", "Ari, with Lark"]));
    expect(planLines(preview)).toEqual(["Bea 2026-03-02 iron/1 swing 1 hinge 66"]);
  });

  it.each(["a1", "a2"])("means the chosen one: %s", (id) => {
    const { plan, waitingRows } = readFile(file("Ari", "ari"), { "answer:which:ari": `is-${id}` }, { students });
    expect(plan?.whose).toEqual([{ alias: "Ari", studentId: id }]);
    expect(plan?.sessions).toHaveLength(2);
    expect(waitingRows).toEqual([]);
  });

  it("may be left out, or be nobody that is offered", () => {
    const left = readFile(file("Ari"), { "answer:which:ari": "leave-out" }, { students });
    expect([left.plan, left.waitingRows]).toEqual([null, []]);
    expect(readFile(file("Ari"), { "answer:which:ari": "is-s1" }, { students }).waitingRows).toEqual([2]);
  });

  it("is no question where one student bears it, or the same one twice under an older name", () => {
    expect(readFile(file("Ari"), {}, { students: [BEA, ari, ari] }).questions).toEqual([]);
    expect(readFile(file("Ari"), {}, { students: [BEA, ari] }).plan?.whose).toEqual([]);
  });

  it("a file can't be of both: rows that another name leads to the second are set aside", () => {
    const answers = { "answer:which:ari": "is-a1", "answer:student:arri": "is-a2" };
    const preview = readFile(file("Ari", "Arri"), answers, { students });
    expect(codes(preview.issues)).toEqual(["two-of-one-alias"]);
    expect(preview.plan?.sessions).toHaveLength(1);
    expect(preview.plan?.whose).toContainEqual({ alias: "Ari", studentId: "a1" });
  });

  it("in a file without names both are offered, told apart", () => {
    const preview = readFile("date,club,hinge\n2026-03-08,7-iron,66\n", {}, { students });
    expect(preview.questions[0]?.options.map(({ id, code }) => [id, code])).toEqual([
      ["s1", "student"],
      ["a1", "twin"],
      ["a2", "twin"],
    ]);
    const chosen = readFile("date,club,hinge\n2026-03-08,7-iron,66\n", { "answer:whose-file": "a2" }, { students });
    expect(chosen.plan?.whose).toEqual([{ alias: "Ari", studentId: "a2" }]);
  });
});
