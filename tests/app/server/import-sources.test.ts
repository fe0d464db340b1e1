import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { gatherAnswers, withoutSource } from "@/app/_server/import/import-answers";
import { type ImportDraft, previewImport } from "@/app/_server/import/import-desk";
import { forgetSource, sourceFingerprint, sourcesOf } from "@/app/_server/import/import-source";
import { confirmImport } from "@/app/_server/import/write-import";
import { startAcademy } from "./own-academy-data";

let viewer: Viewer;
let remove: () => void;
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
});
afterAll(() => remove());

const HEADS = "who,student,date,club,swing,angle,side tilt setup";
const draft = (rows: string, answers: ImportDraft["answers"] = [], heads = HEADS): ImportDraft => ({
  fileName: "source.csv",
  file: Buffer.from(`${heads}\n${rows}\n`).toString("base64"),
  answers,
});
const FIRST = "x,Leo,03/04/2026,7-iron,1,1.15,6";
const SAID: ImportDraft["answers"] = [
  ["answer:student:leo", "new-left"],
  ["answer-givenBy:student:leo", "father"],
  ["answer:date-order", "day-first"],
  ["answer:left-sign", "picture"],
  ["answer:map:6", "fundamental:hinge"],
  ["answer:map-unit:6", "rad"],
];

describe("a source is remembered by its heads", () => {
  it("nothing is known of the first file, and nothing kept before it is imported", async () => {
    const preview = await previewImport(viewer, draft(FIRST, SAID));
    expect([preview.remembered, sourcesOf(viewer)]).toEqual([null, []]);
    expect(preview.questions.filter(({ answer, standing }) => answer === null && standing === null)).toEqual([]);
  });

  it("the next file with the same heads starts from columns, units, signs and order of dates of the last one", async () => {
    expect((await confirmImport(viewer, draft(FIRST, SAID))).kind).toBe("imported");
    const next = await previewImport(viewer, draft("x,Leo,05/04/2026,7-iron,1,1.2,7"));
    expect(next.remembered).toMatchObject({ fileName: "source.csv" });
    expect(next.questions.map(({ id, answer }) => [id, answer])).toEqual([
      ["date-order", "day-first"],
      ["left-sign", "picture"],
    ]);
    const [session] = next.plan?.sessions ?? [];
    expect(session?.session.day).toBe("2026-04-05");
    expect(
      session?.session.swings[0]?.readings.map(({ value, signRule }) => [Number(value?.toFixed(1)), signRule]),
    ).toEqual([
      [68.8, "neutral"],
      [-7, "picture"],
    ]);
  });

  it("capitals and blanks of the heads don't matter, another order of columns does", () => {
    const print = (heads: string) => sourceFingerprint(heads.split(","));
    expect(print("Student, DATE")).toBe(print("student,date"));
    expect(print("date,student")).not.toBe(print("student,date"));
  });

  it("what is said for one file holds before what is remembered", async () => {
    const other = draft("x,Leo,05/04/2026,7-iron,1,70,7", [
      ["answer:map-unit:6", "deg"],
      ["answer:date-order", "month-first"],
    ]);
    const { plan } = await previewImport(viewer, other);
    expect([plan?.sessions[0]?.session.day, plan?.sessions[0]?.session.swings[0]?.readings[0]?.value]).toEqual([
      "2026-05-04",
      70,
    ]);
  });

  it("can be forgotten", async () => {
    forgetSource(viewer, sourceFingerprint(HEADS.split(",")));
    const next = await previewImport(viewer, draft("x,Leo,05/04/2026,7-iron,1,1.2,7"));
    expect(next.remembered).toBeNull();
    expect(next.plan).toBeNull();
  });
});

describe("the answers of a sent preview", () => {
  function sent(fields: Readonly<Record<string, string>>): FormData {
    const data = new FormData();
    for (const [name, value] of Object.entries(fields)) data.set(name, value);
    return data;
  }
  const head = {
    fileName: "x",
    answers: [
      ["answer:map:2", "field:day"],
      ["answer:date-order", "day-first"],
    ],
  } as const;

  it("a column counts as said only when it was changed; what was said of columns before stays", () => {
    const { answers, columns } = gatherAnswers(
      head,
      sent({ "answer:map:1": "field:alias", "shown:answer:map:1": "field:alias" }),
    );
    expect([[...answers], columns]).toEqual([[["answer:map:2", "field:day"]], "same"]);
  });

  it("a changed column lets go of the unit that it had, and asks for a new look", () => {
    const before = { ...head, answers: [["answer:map-unit:1", "rad"]] as const };
    const { answers, columns } = gatherAnswers(
      before,
      sent({
        "answer:map:1": "fundamental:hip-sway",
        "shown:answer:map:1": "fundamental:hinge",
        "answer:map-unit:1": "rad",
        "shown:answer:map-unit:1": "rad",
      }),
    );
    expect([[...answers], columns]).toEqual([[["answer:map:1", "fundamental:hip-sway"]], "changed"]);
  });

  it("forgetting keeps what belongs to the file alone", () => {
    const answers = new Map([
      ["answer:map:1", "x"],
      ["answer:left-sign", "neutral"],
      ["answer:student:leo", "new-left"],
      ["answer-givenBy:student:leo", "m"],
    ]);
    expect([...withoutSource(answers).keys()]).toEqual(["answer:student:leo", "answer-givenBy:student:leo"]);
  });
});
