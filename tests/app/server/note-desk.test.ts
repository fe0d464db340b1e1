import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { loadNoteCodings } from "@/app/_server/session/note-codings";
import { answerNote, loadCodings, settleNote, takeBackCoding } from "@/app/_server/session/note-desk";
import type { PhraseCoding } from "@/lib/domain/phrase-coding";
import { startAcademy } from "./own-academy-data";

let academy: Awaited<ReturnType<typeof startAcademy>>;
let viewer: Viewer;
beforeAll(async () => {
  academy = await startAcademy();
  viewer = academy.viewer;
});
afterAll(() => academy.remove());

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
    const settled = settleNote(viewer, form({ note: "7 of 10 solid", fill: "7/10" }));
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
