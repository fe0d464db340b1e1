import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { confirmImport } from "@/app/_server/import/write-import";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { keepGridChoice, loadGridSource, turnGrid } from "@/app/_server/session/grid-desk";
import { loadSessionForm } from "@/app/_server/session/load-forms";
import { loadReadingSheet } from "@/app/_server/session/load-sheet";
import { addSession } from "@/app/_server/session/session-desk";
import { Form } from "@/app/_ui/form/form";
import { ReadingSheet } from "@/app/_ui/sheet/reading-sheet";
import { readStudents } from "@/db/read/students";
import { startAcademy } from "./own-academy-data";

let viewer: Viewer;
let remove: () => void;

/** Values that stand nowhere else on a page: as typed, and as their levels read when rounded. */
const PLANTED = { hinge: "71.37", "setup-tilt": "6.83", "head-drift": "11.43" } as const;
const LEVELS = ["71.37", "71.4", "6.83", "6.8", "11.43", "11.4"];

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const days = ["2026-03-02", "2026-03-12", "2026-03-22", "2026-04-02"];
  const rows = days.flatMap((day) =>
    [1, 2, 3].flatMap((swing) =>
      Object.entries(PLANTED).map(
        ([fundamental, value]) => `Pim,right,2010,${day},7-iron,${swing},${fundamental},${value},1`,
      ),
    ),
  );
  const text = ["student,hand,birth year,date,club,swing,fundamental,value,camera sd", ...rows].join("\n");
  const answers = [
    ["answer:student:pim", "new-right"],
    ["answer-givenBy:student:pim", "himself"],
  ] as const;
  const file = { fileName: "pim.csv", file: Buffer.from(text).toString("base64"), answers };
  expect(await confirmImport(viewer, file)).toMatchObject({ kind: "imported" });
});
afterAll(() => remove());

function pim(): StudentViewer {
  const student = admitToStudent(viewer, readStudents(viewer.db, viewer.scope)[0]?.id ?? "");
  if (!student) throw new Error("no pim");
  return { ...viewer, student };
}

function plantedIn(answer: string): readonly string[] {
  return LEVELS.filter((value) => new RegExp(`(?<![\\d.])${value.replace(".", "[.,]")}(?!\\d)`).test(answer));
}

describe("the form of a new session is blind", () => {
  it("the planted values are on file and judged, so that there is something to hide", async () => {
    const { tracks } = await loadStudentVerdicts(pim());
    expect(plantedIn(JSON.stringify(tracks.map((track) => track.verdict)))).toContain("71.37");
  });

  it("neither the model that travels nor the page holds a value, level or range that is on file", async () => {
    const model = await loadSessionForm(pim(), "none");
    const page = renderToStaticMarkup(createElement(Form, { model, action: "/" }));
    expect(page.length).toBeGreaterThan(10_000);
    for (const answer of [JSON.stringify(model), page]) expect(plantedIn(answer)).toEqual([]);
  });

  it("nor does the paper sheet", async () => {
    const model = await loadReadingSheet(pim(), {});
    const page = renderToStaticMarkup(createElement(ReadingSheet, { model }));
    expect(model.columns.length).toBeGreaterThan(0);
    for (const answer of [JSON.stringify(model), page]) expect(plantedIn(answer)).toEqual([]);
  });

  it("nor the answer to an unusual value: it asks of anyone, and passes when it is confirmed", async () => {
    const data = new FormData();
    for (const [name, value] of Object.entries({ day: viewer.today, clubGroup: "iron", "r.1.hinge": "149" }))
      data.set(name, value);
    data.set("r.1.hinge", "170");
    const refused = await addSession(pim(), data);
    if (refused.kind !== "refused") throw new Error("taken");
    const model = await loadSessionForm(pim(), refused.draftId);
    expect(JSON.stringify(model.grid?.rows)).toContain("is unusual for this fundamental in anyone");
    expect(plantedIn(JSON.stringify(model))).toEqual([]);
    data.set("ok.r.1.hinge", "17");
    expect((await addSession(pim(), data)).kind).toBe("refused");
    data.set("ok.r.1.hinge", "170");
    expect((await addSession(pim(), data)).kind).toBe("added");
  });

  it("what is on file decides which columns come first, and nothing says why", async () => {
    const model = await loadSessionForm(pim(), "none");
    const first = model.grid?.columns.slice(0, model.grid.first).map((column) => column.fundamentalId) ?? [];
    expect(first).toEqual(expect.arrayContaining(["hinge", "setup-tilt"]));
    expect(first.length).toBeLessThan(model.grid?.columns.length ?? 0);
    expect(JSON.stringify(model.grid)).not.toMatch(/in hand|inside|owned/i);
  });
});

describe("what was typed into the rest keeps it open", () => {
  it("shut at first, open where a refused form holds something of it; swings typed are shown", async () => {
    const shut = await loadSessionForm(pim(), "none");
    expect(shut.grid?.rest?.open).toBe("no");
    expect(shut.grid?.shown).toBe(5);
    const data = new FormData();
    data.set("r.7.shaft-lean", "x9");
    const refused = await addSession(pim(), data);
    if (refused.kind !== "refused") throw new Error("taken");
    const open = await loadSessionForm(pim(), refused.draftId);
    expect(open.grid?.rest?.open).toBe("yes");
    expect(open.grid?.shown).toBe(7);
  });
});

describe("how a viewer likes the grid", () => {
  it("is remembered; what is no choice changes nothing", async () => {
    const choices = async () => {
      const { arrangement, letters } = await loadGridSource(pim(), "iron");
      return [arrangement, letters];
    };
    expect(await choices()).toEqual(["swings", "on"]);
    const data = new FormData();
    data.set("letters", "off");
    data.set("arrangement", "sideways");
    keepGridChoice(viewer, data);
    expect(await choices()).toEqual(["swings", "off"]);
    turnGrid(viewer);
    expect(await choices()).toEqual(["columns", "off"]);
    turnGrid(viewer);
    expect(await choices()).toEqual(["swings", "off"]);
  });
});
