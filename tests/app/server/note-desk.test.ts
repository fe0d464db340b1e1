import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { loadNoteCodings } from "@/app/_server/session/note-codings";
import {
  answerNote as answer,
  answerSessionNote,
  groupNote,
  loadCodings,
  recordNote,
  settleNote,
  singleNote,
  takeBackCoding,
  tapSessionNote,
} from "@/app/_server/session/note-desk";
import type { PhraseCoding } from "@/lib/domain/phrase-coding";
import { studentScope } from "../../db/academy-fixture";
import { startAcademy } from "./own-academy-data";

const FORM = singleNote("s");
let academy: Awaited<ReturnType<typeof startAcademy>>;
let viewer: Viewer;
beforeAll(async () => {
  academy = await startAcademy();
  viewer = academy.viewer;
});
afterAll(() => academy.remove());

const answerNote = (who: Viewer, data: FormData) => answer(who, data, FORM);

function form(fields: Readonly<Record<string, string>>, ...taps: readonly string[]): FormData {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.set(name, value);
  for (const tap of taps) data.append("recode", tap);
  return data;
}
const tap = (phrase: string, coding: PhraseCoding) => JSON.stringify({ phrase, coding });
const saidOf = (note: string, more: Readonly<Record<string, string>> = {}) =>
  answerNote(viewer, form({ note, ...more })).sentences.map(({ rows }) =>
    rows.map(({ word, said }) => `${word}: ${said}`),
  );

describe("what a form's note says", () => {
  it("stands beside each sentence: counted, only named, and left out with why", () => {
    expect(saidOf("7 of 10 solid, some fat. No shanks, pushed two. Heavy legs; yesterday thin")).toEqual([
      ["solid: 7 of 10, solid", "fat: named, not counted (fat)"],
      ["shanks: none, the note says (heel or shank)", "pushed: left out: where the ball flew, not how it was struck"],
      ["Heavy: left out: not the ball", "thin: left out: of another time"],
    ]);
  });

  it("solid of balls is offered into empty fields, and a number of balls never made up", () => {
    const offered = (fields: Readonly<Record<string, string>>) => answerNote(viewer, form(fields)).offer?.choice.value;
    expect(offered({ note: "7 of 10 solid" })).toBe("7/10");
    expect(offered({ note: "7 solid" })).toBeUndefined();
    expect(offered({ note: "7 solid", balls: "12" })).toBe("7/12");
    expect(offered({ note: "7 of 10 solid", solid: "7", balls: "10" })).toBeUndefined();
  });

  it("fields that differ are asked about, and counts that are more than the balls", () => {
    const asks = (fields: Readonly<Record<string, string>>) => answerNote(viewer, form(fields)).asks;
    expect(asks({ note: "7 of 10 solid", solid: "6", balls: "10" })).toHaveLength(1);
    expect(asks({ note: "7 of 10 solid", solid: "7", balls: "10" })).toEqual([]);
    expect(asks({ note: "5 fat", balls: "3" })).toHaveLength(1);
  });

  it("without scripts what was taken over stands in the fields, and the taps don't travel on", () => {
    const settled = settleNote(viewer, form({ note: "7 of 10 solid", fill: "7/10" }), FORM);
    expect([...settled]).toEqual([
      ["note", "7 of 10 solid"],
      ["solid", "7"],
      ["balls", "10"],
    ]);
  });
});

describe("a correction", () => {
  it("is remembered for every note of the academy, listed with who and when, and can be taken back", () => {
    answerNote(viewer, form({ note: "2 lateral" }, tap("# lateral", { as: "strike", kind: "toe" })));
    expect(saidOf("then 4 lateral")).toEqual([["lateral: 4, toe (as this academy reads it)"]]);
    expect(saidOf("2 thin")).toEqual([["thin: 2, thin or topped"]]);
    const page = loadNoteCodings(viewer);
    expect(page.table.rows[0]?.cells.slice(0, 3)).toEqual(["# lateral", "a strike: toe", "Coach Lark"]);
    takeBackCoding(viewer, form({ phrase: "# lateral" }));
    expect(saidOf("then 4 lateral")).toEqual([["lateral: 4, heel or shank"]]);
    expect(loadNoteCodings(viewer).takeBacks).toEqual([]);
    expect(loadNoteCodings(viewer).history?.table.rows).toHaveLength(2);
  });

  it("of a phrase that is not in the note, or of no whole coding, is not remembered", () => {
    const before = loadCodings(viewer).size;
    answerNote(viewer, form({ note: "2 thin" }, tap("# fat", { as: "nothing" }), "{", "null", '{"phrase":"# thin"}'));
    answerNote(viewer, form({ note: "" }, tap("", { as: "nothing" })));
    expect(loadCodings(viewer).size).toBe(before);
  });
});

const recount = (place: string, coding: unknown) => JSON.stringify({ place, coding });
/** A form as a page sends it after a tap on a count. */
function tapped(fields: Readonly<Record<string, string>>, ...taps: readonly string[]): FormData {
  const data = form(fields);
  for (const each of taps) data.append("recount", each);
  return data;
}
const rowsOf = (data: FormData) =>
  answerNote(viewer, data).sentences.flatMap(({ rows }) => rows.map(({ word, said }) => `${word}: ${said}`));

describe("a count that is wrong", () => {
  it("is corrected with one tap, kept with the form, said to be corrected, and taken back", () => {
    const first = answerNote(viewer, form({ note: "thin x3, 2 fat" }));
    const two = first.sentences[0]?.rows[0]?.counts?.choices.find((choice) => choice.label === "2");
    if (!two) throw new Error("no 2 to tap");
    expect([two.name, two.spoken]).toEqual(["recount", "2, thin or topped"]);
    const after = answerNote(viewer, tapped({ note: "thin x3, 2 fat" }, two.value));
    const rows = after.sentences[0]?.rows ?? [];
    expect(rows.map((row) => row.said)).toEqual(["2, thin or topped (corrected in this note)", "2, fat"]);
    const kept = { note: "thin x3, 2 fat", counted: after.counted.value };
    expect(rowsOf(form(kept))[0]).toMatch(/corrected in this note/);
    const back = rows[0]?.choices[0];
    expect(back?.label).toBe("Undo this");
    const undone = answerNote(viewer, tapped(kept, back?.value ?? ""));
    expect([undone.sentences[0]?.rows[0]?.said, undone.counted.value]).toEqual(["3, thin or topped", ""]);
  });

  it("of balls that were never so many is one without them, and no number of balls is ever offered", () => {
    const rows = answerNote(viewer, form({ note: "2/5 fat" })).sentences[0]?.rows ?? [];
    const labels = rows[0]?.counts?.choices.map((choice) => choice.label) ?? [];
    expect(labels).toEqual(["0", "1", "3", "4", "5", "2, but not of 5", "Only named, in this note"]);
    const choice = rows[0]?.counts?.choices.find(({ label }) => label === "2, but not of 5");
    expect(rowsOf(tapped({ note: "2/5 fat" }, choice?.value ?? ""))).toEqual(["fat: 2, fat (corrected in this note)"]);
    const more = tapped({ note: "2/5 fat" }, recount("1 2/5 fat", { as: "count", count: 9, of: "as-read" }));
    expect(rowsOf(more)).toEqual(["fat: 9, fat (corrected in this note)"]);
  });

  it("is of one phrase: the second of two alike is told from the first, and a mention can be given a number", () => {
    const note = "2 thin. Then some fat, 2 thin";
    const taps = [
      recount("2 2 thin", { as: "count", count: 4, of: "as-read" }),
      recount("1 fat", { as: "count", count: 1, of: "as-read" }),
    ];
    expect(rowsOf(tapped({ note }, ...taps))).toEqual([
      "thin: 2, thin or topped",
      "fat: 1, fat (corrected in this note)",
      "thin: 4, thin or topped (corrected in this note)",
    ]);
  });

  it("by a number word is remembered for every note of the academy; figures are not", () => {
    answerNote(
      viewer,
      tapped({ note: "a couple of thin" }, recount("1 couple thin", { as: "count", count: 3, of: "as-read" })),
    );
    answerNote(viewer, tapped({ note: "2 fat" }, recount("1 2 fat", { as: "count", count: 5, of: "as-read" })));
    expect(rowsOf(form({ note: "couple thin, 2 fat, 2 thin" }))).toEqual([
      "thin: 3, thin or topped (as this academy reads it)",
      "fat: 2, fat",
      "thin: 2, thin or topped",
    ]);
    expect(loadNoteCodings(viewer).table.rows.at(-1)?.cells.slice(0, 2)).toEqual(["couple thin", "3 counted"]);
    answerNote(viewer, tapped({ note: "couple thin" }, recount("1 couple thin", { as: "as-read" })));
    expect(rowsOf(form({ note: "couple thin" }))).toEqual(["thin: 2, thin or topped"]);
  });

  it("that no page can have sent changes nothing", () => {
    const wrong = ["", "{", "null", "[]", recount("1 2 fat", { as: "count", count: -1, of: "none" })];
    const more = [
      recount("1 2 fat", { as: "count", count: 2, of: 7 }),
      recount("1 2 fat", { as: "strike", kind: "toe" }),
      recount("9 2 fat", { as: "count", count: 1, of: "none" }),
      recount("1 2 fat", { as: "count", count: 1.5, of: "none" }),
    ];
    const before = loadCodings(viewer).size;
    for (const text of [...wrong, ...more]) expect(rowsOf(tapped({ note: "2 fat" }, text))).toEqual(["fat: 2, fat"]);
    for (const counted of ["{", "5", "null", `[${wrong.at(-1)}]`, '["1 2 fat"]'])
      expect(rowsOf(form({ note: "2 fat", counted }))).toEqual(["fat: 2, fat"]);
    expect(loadCodings(viewer).size).toBe(before);
  });
});

describe("the note of a saved session", () => {
  const session = (note: string | null) => ({ id: "one", note, solid: null, balls: null });
  const said = (note: string, id = "one") =>
    answerSessionNote(mine(), { ...session(note), id })?.sentences.flatMap(({ rows }) => rows.map((row) => row.said));
  const mine = () => ({ ...viewer, student: studentScope("s") });

  it("keeps what its form said of counts, for this session alone; what no longer stands in the note is gone", () => {
    const counted = JSON.stringify([
      { place: "1 2 fat", coding: { as: "count", count: 1, of: "as-read" } },
      { place: "1 9 thin", coding: { as: "count", count: 1, of: "as-read" } },
    ]);
    recordNote(viewer, "one", form({ note: "2 fat", counted }), FORM);
    expect(said("2 fat")).toEqual(["1, fat (corrected in this note)"]);
    expect(said("2 fat", "two")).toEqual(["2, fat"]);
    expect(said("3 fat")).toEqual(["3, fat"]);
    expect(said("9 thin")).toEqual(["9, thin or topped"]);
    expect(loadNoteCodings(viewer).table.rows.at(-1)?.cells[0]).toBe("2 fat (in one note)");
  });

  it("is corrected after saving and taken back, from the page or from the list of the settings", () => {
    const tap = (coding: unknown) => tapSessionNote(mine(), session("2 fat"), tapped({}, recount("1 2 fat", coding)));
    tap({ as: "mention" });
    expect(said("2 fat")).toEqual(["named, not counted (fat) (corrected in this note)"]);
    tap({ as: "as-read" });
    expect(said("2 fat")).toEqual(["2, fat"]);
    tap({ as: "count", count: 0, of: "none" });
    expect(said("2 fat")).toEqual(["none, the note says (fat) (corrected in this note)"]);
    takeBackCoding(viewer, form({ phrase: loadNoteCodings(viewer).takeBacks.at(-1)?.phrase ?? "" }));
    expect(said("2 fat")).toEqual(["2, fat"]);
    expect(answerSessionNote(mine(), session(null))).toBeNull();
  });

  it("of a student in a group's form stands in fields of that student alone", () => {
    const data = new FormData();
    data.set("s.bo.note", "thin x3");
    data.set("s.cleo.note", "2 fat");
    data.append("s.bo.recount", recount("1 thin x3", { as: "count", count: 2, of: "as-read" }));
    const [bo, cleo] = ["bo", "cleo"].map((id) => answer(viewer, data, groupNote(id)));
    expect(bo?.sentences[0]?.rows[0]?.said).toBe("2, thin or topped (corrected in this note)");
    expect([bo?.whose, bo?.fields.note, bo?.counted.name]).toEqual(["bo", "s.bo.note", "s.bo.counted"]);
    expect(cleo?.sentences[0]?.rows[0]?.said).toBe("2, fat");
    expect(cleo?.sentences[0]?.rows[0]?.choices[0]?.name).toBe("s.cleo.recode");
    const settled = settleNote(viewer, data, groupNote("bo"));
    expect(settled.has("s.bo.recount")).toBe(false);
    expect(settled.get("s.bo.counted")).toBe(bo?.counted.value);
  });
});
