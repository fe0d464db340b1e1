import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import {
  addDrill,
  changeDrill,
  loadLibrary,
  loadLibraryDrill,
  loadLibraryForm,
} from "@/app/_server/drill/library-desk";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { giveDrill } from "@/app/_server/season/drill-desk";
import { loadDrillForm, loadDrillPage } from "@/app/_server/season/load-drills";
import { addStudent } from "@/app/_server/season/student-desk";
import { readDrills } from "@/db/read/drills";
import { sent } from "./corrected-season";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";

let viewer: Viewer;
let remove: () => void;
const dot = (): StudentViewer => firstStudent(viewer, "Dot");
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const who = { hand: "right", birthYear: "2014", clubs: "", zone: "UTC", consentGivenBy: "a parent" };
  await addStudent(viewer, formOf({ alias: "Dot", ...who, consentOnPaper: "yes" }));
});
afterAll(() => remove());

const GATE = { name: "Gate", fundamental: "hinge", how: "Through two tees.", cautions: "", reps: "20", daysAWeek: "4" };

function kept(outcome: ReturnType<typeof changeDrill>): string {
  if (outcome.kind !== "kept") throw new Error(JSON.stringify(outcome));
  return outcome.drillId;
}

function shown(id: string, draft: string = randomUUID()) {
  const form = loadLibraryForm(viewer, id, draft);
  if (form === null) throw new Error("no form");
  return form;
}
const cells = () => loadLibrary(viewer).parts[0]?.table?.rows.map((row) => row.cells) ?? [];

it("a drill joins the library by itself, once, and is offered with its dose where drills are given", () => {
  expect(loadLibrary(viewer).title).toBe("No drill is offered");
  const data = formOf({ ...GATE, draft: randomUUID() });
  expect([kept(addDrill(viewer, data)), kept(addDrill(viewer, data))]).toHaveLength(2);
  expect(cells()).toEqual([["Gate", "Wrist hinge", GATE.how, "20 repeats a day, 4 days a week", "0", "yes"]]);
  const [part] = loadDrillForm(dot(), randomUUID(), {}).parts;
  expect(part?.fields[0]?.options.map(({ label }) => label)).toEqual(["Gate (Wrist hinge)", "A new drill"]);
});

it("a name twice, or nothing typed, comes back as it was typed, with what is wrong", () => {
  const refused = addDrill(viewer, formOf({ ...GATE, name: "gate", how: "", draft: randomUUID() }));
  if (refused.kind !== "refused") throw new Error("kept");
  const form = loadLibraryForm(viewer, null, refused.draftId);
  const fields = form?.parts[0]?.fields ?? [];
  expect(fields.filter(({ error }) => error !== "").map(({ name, value }) => [name, value])).toEqual([
    ["name", "gate"],
    ["how", ""],
  ]);
  expect(readDrills(viewer.db, viewer.scope)).toHaveLength(1);
});

it("described anew, what was given before says how it was; the history keeps who and why", async () => {
  const [drill] = readDrills(viewer.db, viewer.scope);
  const id = drill?.id ?? "";
  const given = giveDrill(dot(), formOf({ drill: id, start: "2020-01-02", words: "daily" }));
  if (given.kind !== "given") throw new Error("refused");
  kept(
    changeDrill(viewer, id, sent(shown(id), { name: "Two tees", how: "Through two tees, slowly.", why: "Too fast." })),
  );
  const page = loadLibraryDrill(viewer, id);
  expect(page?.parts[1]?.table?.rows.map((row) => row.cells.slice(1))).toEqual([
    ["Name: “Gate”, How it goes: “Through two tees.”", "Too fast.", viewer.name],
  ]);
  const facts = (await loadDrillPage(dot(), given.assignmentId))?.parts[0];
  expect(facts?.heading).toBe("Two tees");
  expect(facts?.facts[0]).toMatchObject({ name: "When it was given", value: "Gate: Through two tees." });
  expect(shown(id).parts[0]?.fields.some(({ name }) => name === "fundamental")).toBe(false);
});

it("two who change it at once: the second sees what it became, and may hold to theirs", () => {
  const id = readDrills(viewer.db, viewer.scope)[0]?.id ?? "";
  const draft = randomUUID();
  const old = sent(shown(id), { cautions: "Slowly.", why: "Safer.", draft });
  kept(changeDrill(viewer, id, sent(shown(id), { reps: "10", why: "Enough." })));
  const refused = changeDrill(viewer, id, old);
  if (refused.kind !== "refused") throw new Error("kept");
  expect(readDrills(viewer.db, viewer.scope)[0]).toMatchObject({ reps: 10, cautions: "" });
  const again = shown(id, refused.draftId);
  expect(again.refusal).toContain("Somebody changed this drill");
  kept(changeDrill(viewer, id, sent(again, {})));
  expect(readDrills(viewer.db, viewer.scope)[0]).toMatchObject({ reps: 20, cautions: "Slowly." });
});

it("offered no more, it is still there for whoever had it, and for nobody else; offered again it is back", async () => {
  const id = readDrills(viewer.db, viewer.scope)[0]?.id ?? "";
  kept(changeDrill(viewer, id, sent(shown(id), { offered: "no", why: "A better one." })));
  expect(cells()[0]?.at(-1)).toMatch(/^not since /);
  const who = { hand: "left", birthYear: "2013", clubs: "", zone: "UTC", consentGivenBy: "a parent" };
  await addStudent(viewer, formOf({ alias: "Ada", ...who, consentOnPaper: "yes" }));
  const offered = (of: StudentViewer) =>
    loadDrillForm(of, randomUUID(), {}).parts[0]?.fields[0]?.options.map(({ value }) => value);
  const ada = firstStudent(viewer, "Ada");
  expect([offered(dot()), offered(ada)]).toEqual([[id, "new"], ["new"]]);
  const stale = giveDrill(ada, formOf({ drill: id, start: "2020-01-02" }));
  if (stale.kind !== "refused") throw new Error("given");
  expect(loadDrillForm(ada, stale.draftId, {}).parts[0]?.fields[0]?.error).toContain("not offered any more");
  kept(changeDrill(viewer, id, sent(shown(id), { offered: "yes", why: "Needed." })));
  expect(offered(ada)).toEqual([id, "new"]);
});

it("of a drill that isn't there nothing is shown or kept", () => {
  expect([loadLibraryForm(viewer, "none", randomUUID()), loadLibraryDrill(viewer, "none")]).toEqual([null, null]);
  expect(changeDrill(viewer, "none", formOf({ why: "x" }))).toEqual({ kind: "unknown" });
});
