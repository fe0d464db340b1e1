import { randomUUID } from "node:crypto";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { StudentViewer } from "@/app/_server/gate";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { loadCorrectForm, saveCorrection } from "@/app/_server/session/correct-desk";
import { loadHistory, loadSessionPage } from "@/app/_server/session/load-history";
import { Form } from "@/app/_ui/form/form";
import { RecordPage } from "@/app/_ui/record-page/record-page";
import { readReadingsInForce } from "@/db/read/readings";
import { readStudent } from "@/db/read/students";
import { buildReadingsCsv } from "@/lib/report/build-downloads";
import type { FormModel } from "@/lib/report/form-model";
import { admitFilmed, admitNew, formOf, sent } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

let mine: StudentViewer;
let other: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  const { viewer, remove: end } = await startAcademy();
  remove = end;
  mine = await admitFilmed(viewer, "Zephyrine");
  other = await admitNew(viewer, "Lark", "left");
});
afterAll(() => remove());

function form(draftId: string = randomUUID()): FormModel {
  const model = loadCorrectForm(mine, "film1", draftId);
  if (!model) throw new Error("no form");
  return model;
}
const values = () =>
  readReadingsInForce(mine.db, mine.student)
    .filter((reading) => reading.sessionId === "film1")
    .map((reading) => `${reading.swing} ${reading.fundamentalId} ${reading.value}`);
const rows = (table: string) => mine.db.sqlite.prepare(`SELECT count(*) FROM ${table}`).pluck().get();

async function refused(data: FormData): Promise<FormModel> {
  const outcome = await saveCorrection(mine, "film1", data);
  if (outcome.kind !== "refused") throw new Error(outcome.kind);
  return form(outcome.draftId);
}
const errorAt = (model: FormModel, name: string): string =>
  [...model.parts.flatMap((part) => part.fields), ...(model.grid?.rows.flatMap((row) => row.cells) ?? [])].find(
    (field) => field.name === name,
  )?.error ?? "";

describe("correcting a session's readings", () => {
  it("needs a reason; an unusual value is asked, an emptied cell too; nothing is written and what was typed is kept", async () => {
    const back = await refused(sent(form(), { "r.1.hinge": "-300", "r.2.hinge": "", "r.3.hinge": "8o" }));
    expect(errorAt(back, "why")).toMatch(/needed/);
    expect(errorAt(back, "r.1.hinge")).toMatch(/unusual/);
    expect(errorAt(back, "r.2.hinge")).toMatch(/empty now/);
    expect(errorAt(back, "r.3.hinge")).toMatch(/not a number/);
    expect(back.grid?.rows[0]?.cells[0]?.value).toBe("-300");
    expect(rows("correction")).toBe(0);
    const untouched = await refused(sent(form(), { why: "nothing" }));
    expect(errorAt(untouched, "why")).toMatch(/No cell says anything else/);
  });

  it("changes, takes out and adds in one go: three of four cells, the fourth as it was, and the verdicts follow", async () => {
    const before = readStudent(mine.db, mine.student).revision;
    const typed = {
      "r.1.hinge": "−70,5",
      "r.2.hinge": "n/m",
      "r.3.hinge": "",
      "r.4.hinge": "85",
      "r.4.foot-line": "3",
    };
    const saved = await saveCorrection(
      mine,
      "film1",
      sent(form(), { ...typed, why: "wrong still", confirmVoid: "yes", confirmUnusual: "yes" }),
    );
    expect(saved).toEqual({ kind: "saved" });
    expect(values()).toEqual(["1 hinge -70.5", "2 hinge null", "4 foot-line 3", "4 hinge 85"]);
    expect(readStudent(mine.db, mine.student).revision).toBeGreaterThan(before);
    const { record, tracks } = await loadStudentVerdicts(mine);
    const track = tracks.find(({ history }) => history.fundamental.id === "hinge");
    expect(track?.judged.track.sessions[1]?.swings).toEqual([-70.5, 85]);
    const csv = buildReadingsCsv(record);
    expect(csv).toContain("-70.5");
    expect(csv).not.toContain(",81.337,");
  });

  it("the session's page shows value, what was typed, who and why; a void reading comes back by a later change", async () => {
    const page = loadSessionPage(mine, "film1", undefined);
    if (!page) throw new Error("no page");
    const markup = renderToStaticMarkup(createElement(RecordPage, { model: page, action: "/x" }));
    for (const text of [
      "wrong still",
      "void",
      "n/m, corrected",
      "Coach Lark",
      "Reading voided",
      "Readings added later",
    ])
      expect(markup).toContain(text);
    expect(await saveCorrection(mine, "film1", sent(form(), { "r.3.hinge": "81.337", why: "it was right" }))).toEqual({
      kind: "saved",
    });
    expect(values()).toContain("3 hinge 81.337");
    expect(loadHistory(mine, undefined).parts[0]?.tables[0]?.rows[0]?.cells.slice(3)).toEqual([
      "void",
      "81.337",
      "Coach Lark",
      "it was right",
    ]);
  });

  it("what another window changed meanwhile is shown beside, and overwritten only by who saw it", async () => {
    const [one, two] = [form(), form()];
    await saveCorrection(mine, "film1", sent(one, { "r.1.hinge": "71", why: "first" }));
    const back = await refused(sent(two, { "r.1.hinge": "72", "r.2.hinge": "60", why: "second" }));
    expect(errorAt(back, "r.1.hinge")).toMatch(/Coach Lark made it 71 \(first\); you wrote 72/);
    expect(back.refusal).toMatch(/Nothing was saved/);
    expect(values()).toContain("1 hinge 71");
    expect(values()).toContain("2 hinge null");
    expect(await saveCorrection(mine, "film1", sent(back, {}))).toEqual({ kind: "saved" });
    expect(values().slice(0, 2)).toEqual(["1 hinge 72", "2 hinge 60"]);
  });

  it("a reading that another window added meanwhile isn't overwritten either", async () => {
    const [one, two] = [form(), form()];
    await saveCorrection(mine, "film1", sent(one, { "r.5.hinge": "90" }));
    const back = await refused(sent(two, { "r.5.hinge": "91" }));
    expect(errorAt(back, "r.5.hinge")).toMatch(/made it 90; you wrote 91/);
    expect(errorAt(await refused(sent(back, {})), "why")).toMatch(/needed/);
    expect(await saveCorrection(mine, "film1", sent(back, { "r.5.hinge": "90" }))).toMatchObject({ kind: "refused" });
    expect(values()).toContain("5 hinge 90");
  });

  it("sent twice it is saved once, with the same answer", async () => {
    const data = sent(form(), { "r.1.hinge": "73", why: "once" });
    const before = Number(rows("correction"));
    expect(await saveCorrection(mine, "film1", data)).toEqual({ kind: "saved" });
    expect(await saveCorrection(mine, "film1", data)).toEqual({ kind: "saved" });
    expect(rows("correction")).toBe(before + 1);
  });

  it("nobody corrects through another student, a foreign reading or an unknown session", async () => {
    const before = rows("correction");
    expect(await saveCorrection(other, "film1", sent(form(), { "r.1.hinge": "1", why: "x" }))).toEqual({
      kind: "not-there",
    });
    expect(await saveCorrection(mine, "nothing", formOf({ why: "x" }))).toEqual({ kind: "not-there" });
    const foreign = mine.db.sqlite
      .prepare<[], number>("SELECT id FROM reading WHERE session_id = 'film2' LIMIT 1")
      .pluck()
      .get();
    const forged = sent(form(), { "r.1.hinge": "1", why: "x", "seen.1.hinge": `${foreign}:0` });
    expect((await saveCorrection(mine, "film1", forged)).kind).toBe("refused");
    expect(rows("correction")).toBe(before);
  });

  it("says that it is made with sight of the past", () => {
    const markup = renderToStaticMarkup(createElement(Form, { model: form(), action: "/x" }));
    expect(markup).toContain("with sight of the past");
  });
});
