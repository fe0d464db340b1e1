import { randomUUID } from "node:crypto";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { giveDrill, moveDrillBack, stopDrill } from "@/app/_server/season/drill-desk";
import { loadDrill, loadDrillForm, loadDrills } from "@/app/_server/season/load-drills";
import { loadSeason } from "@/app/_server/season/load-season";
import { addStudent } from "@/app/_server/season/student-desk";
import { Form } from "@/app/_ui/form/form";
import { HappenPage } from "@/app/_ui/happen/happen-page";
import { readAssignments, readDrills } from "@/db/read/drills";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { fillSeason, filmDays } from "./reread-season";

let viewer: Viewer;
let remove: () => void;
const form = formOf;
const dot = (): StudentViewer => firstStudent(viewer);
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const who = { hand: "right", birthYear: "2014", clubs: "", zone: "UTC", consentGivenBy: "a parent" };
  await addStudent(viewer, form({ alias: "Dot", ...who, consentOnPaper: "yes" }));
  fillSeason(viewer, dot().student);
});
afterAll(() => remove());
const day = (at: number): string => filmDays(viewer)[at] ?? "";
function give(entries: Readonly<Record<string, string>>): string {
  const outcome = giveDrill(dot(), form(entries));
  if (outcome.kind !== "given") throw new Error("refused");
  return outcome.assignmentId;
}
const ribbons = async () => (await loadSeason(dot(), undefined)).evidence.drills?.map(({ label }) => label);

it("a new drill joins the library and runs; a second one runs beside it; both are ribbons of the season", async () => {
  const fresh = {
    drill: "new",
    name: "Half-way freeze",
    fundamental: "hinge",
    how: "Stop half way.",
    cautions: "Slowly.",
  };
  const first = give({ ...fresh, start: day(2), reps: "10", daysAWeek: "5", stop: "it is easy" });
  expect(readDrills(viewer.db, viewer.scope)).toHaveLength(1);
  const drillId = readDrills(viewer.db, viewer.scope)[0]?.id ?? "";
  give({ drill: drillId, start: day(4), minutes: "10" });
  expect(await ribbons()).toEqual(["Half-way freeze", "Half-way freeze"]);
  expect(loadDrills(dot()).title).toBe("2 drills of Dot run");
  const room = await loadDrill(dot(), first, randomUUID());
  if (!room) throw new Error("no such drill");
  const markup = renderToStaticMarkup(createElement(HappenPage, { model: room.page }));
  for (const told of [
    "Stop half way.",
    "Slowly.",
    "10 repeats a day, 5 days a week",
    "at any pain; else: it is easy",
    "Coach Lark",
  ])
    expect(markup).toContain(told);
  expect(markup).toContain("licensed");
});

it("is stopped with a day and a reason; without a reason the form comes back as it was typed", async () => {
  const [running] = readAssignments(viewer.db, dot().student);
  const id = running?.id ?? "";
  const refused = stopDrill(dot(), id, form({ end: day(5), why: "" }));
  if (refused.kind !== "refused") throw new Error("stopped without a reason");
  expect((await loadDrill(dot(), id, refused.draftId))?.stop?.parts[0]?.fields[0]?.value).toBe(day(5));
  expect(stopDrill(dot(), id, form({ end: day(5), why: "learned" }))).toEqual({ kind: "stopped" });
  expect(stopDrill(dot(), id, form({ end: day(6), why: "again" }))).toEqual({ kind: "not-running" });
  expect((await loadDrill(dot(), id, randomUUID()))?.stop).toBeNull();
  expect(JSON.stringify(loadDrills(dot()).parts[0]?.table)).toContain("stopped: learned");
});

it("a wrong first day is mended by one that stands in for it; the wrong one stays in the list and can be put back", async () => {
  const wrong = readAssignments(viewer.db, dot().student).find(({ end }) => end === null);
  if (!wrong) throw new Error("none runs");
  const prefilled = renderToStaticMarkup(
    createElement(Form, { model: loadDrillForm(dot(), randomUUID(), { instead: wrong.id }), action: "/x" }),
  );
  expect(prefilled).toContain(`value="${day(4)}"`);
  give({ drill: wrong.drillId, start: day(3), instead: wrong.id });
  expect(readAssignments(viewer.db, dot().student).map(({ start }) => start)).toEqual([day(2), day(3)]);
  expect(loadDrills(dot()).parts[0]?.table?.rows).toHaveLength(3);
  expect(giveDrill(dot(), form({ drill: wrong.drillId, start: day(3), instead: wrong.id })).kind).toBe("refused");
  expect(moveDrillBack(dot(), wrong.id, "put")).toBe("updated");
  expect(await ribbons()).toHaveLength(3);
  expect(moveDrillBack(dot(), wrong.id, "take")).toBe("updated");
  expect(moveDrillBack(dot(), wrong.id, "take")).toBe("unchanged");
  expect(await ribbons()).toHaveLength(2);
});
