import { randomUUID } from "node:crypto";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { decideDrill, pageAfter } from "@/app/_server/drill/decide-desk";
import { loadDecide } from "@/app/_server/drill/load-decide";
import { loadDrillsDue } from "@/app/_server/drill/load-drills-due";
import { loadPrescribe } from "@/app/_server/drill/load-prescribe";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { fillDose, giveDrill } from "@/app/_server/season/drill-desk";
import { addEvent } from "@/app/_server/season/event-desk";
import { loadDrillForm, loadDrillPage, loadDrills } from "@/app/_server/season/load-drills";
import { loadSeason } from "@/app/_server/season/load-season";
import { logPractice } from "@/app/_server/season/practice-desk";
import { addStudent } from "@/app/_server/season/student-desk";
import { HappenPage } from "@/app/_ui/happen/happen-page";
import { readDrillDecisions } from "@/db/read/drill-decisions";
import { readAssignmentLog, readDrills } from "@/db/read/drills";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { mondayOf } from "@/lib/domain/practice";
import type { FormModel } from "@/lib/report/form-model";
import { findTable } from "@/lib/report/table-downloads";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { fillSeason } from "./reread-season";

let viewer: Viewer;
let remove: () => void;
const dot = (): StudentViewer => firstStudent(viewer);
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const who = { hand: "right", birthYear: "2014", clubs: "", zone: "UTC", consentGivenBy: "a parent" };
  await addStudent(viewer, formOf({ alias: "Dot", ...who, consentOnPaper: "yes" }));
  fillSeason(viewer, dot().student);
});
afterAll(() => remove());

const ago = (days: number): string => dayFromNumber(dayNumber(viewer.today) - days);
const typedIn = (form: FormModel, name: string): string | undefined =>
  form.parts.flatMap(({ fields, more }) => [...fields, ...(more?.fields ?? [])]).find((each) => each.name === name)
    ?.value;
/** What a browser sends when the form's button is pressed and nothing was typed. */
function untouched(form: FormModel): FormData {
  const data = new FormData();
  for (const { name, value } of form.hidden) data.set(name, value);
  for (const { fields, more } of form.parts)
    for (const { name, value, options, kind } of [...fields, ...(more?.fields ?? [])])
      data.set(name, kind === "select" && value === "" ? (options[0]?.value ?? "") : value);
  return data;
}
function give(data: FormData): string {
  const outcome = giveDrill(dot(), data);
  if (outcome.kind !== "given") throw new Error(JSON.stringify(loadDrillForm(dot(), outcome.draftId, {})));
  return outcome.assignmentId;
}
const drills = () => readAssignmentLog(viewer.db, dot().student);
const markupOf = async (id: string): Promise<string> => {
  const page = await loadDrillPage(dot(), id);
  if (!page) throw new Error("no such drill");
  return renderToStaticMarkup(createElement(HappenPage, { model: page }));
};

describe("a drill is prescribed in two presses", () => {
  it("without a library the form of a new one opens, for the fundamental in hand; its dose is kept as the usual one", () => {
    expect(loadPrescribe(dot(), "hinge")).toMatchObject({ heading: "The library has no drill for it yet." });
    const form = loadDrillForm(dot(), randomUUID(), { for: "hinge" });
    expect([typedIn(form, "drill"), typedIn(form, "fundamental")]).toEqual(["new", "hinge"]);
    expect(form.parts.find(({ more }) => more)?.more?.open).toBe("yes");
    // Two weeks of practice and the week of rest: the day to be measured again is proposed.
    expect(typedIn(form, "remeasureOn")).toBe(dayFromNumber(dayNumber(viewer.today) + 21));
    const data = untouched(form);
    const typed = { name: "Half-way freeze", how: "Stop half way.", start: ago(30), reps: "20", minutes: "10" };
    for (const [name, value] of Object.entries({ ...typed, daysAWeek: "5", words: "slowly", remeasureOn: ago(9) }))
      data.set(name, value);
    give(data);
    // The library is everybody's: what was written for this student is not in it.
    expect(readDrills(viewer.db, viewer.scope)[0]).toMatchObject({
      ...{ dose: "", reps: 20, minutesADay: 10, daysAWeek: 5, remeasureDays: 21 },
    });
    expect(drills()[0]).toMatchObject({
      ...{ dose: "slowly", reps: 20, minutesADay: 10, daysAWeek: 5, stopRule: "", remeasureOn: ago(9) },
    });
  });

  it("the page of the fundamental says what runs, with its dose, and leads to the decision once its day has come", () => {
    expect(loadPrescribe(dot(), "hinge")).toMatchObject({
      press: {
        href: expect.stringMatching(/\/decide$/),
        label: expect.stringMatching(/^Decide about Half-way freeze/),
      },
      facts: [
        { value: "20 repeats a day, 10 minutes a day, 5 days a week; slowly" },
        { value: "at any pain" },
        { value: expect.stringContaining("9 days ago") },
      ],
    });
    expect(loadPrescribe(dot(), null)).toBeNull();
  });

  it("the second press saves the proposal untouched: the drill last used for it, as it was last given", () => {
    const again = loadDrillForm(dot(), randomUUID(), { for: "hinge" });
    const id = give(untouched(again));
    expect(drills().find((each) => each.id === id)).toMatchObject({
      ...{ drill: "Half-way freeze", start: viewer.today, reps: 20, minutesADay: 10, daysAWeek: 5 },
      ...{ dose: "slowly" },
      remeasureOn: dayFromNumber(dayNumber(viewer.today) + 21),
    });
  });

  it("another drill’s dose is filled in on request, and the first day that was typed stays", () => {
    const other = { drill: "new", name: "Gate", fundamental: "hinge", how: "Through it.", start: ago(3), reps: "7" };
    give(formOf({ ...other, daysAWeek: "3" }));
    const gate = readDrills(viewer.db, viewer.scope).find(({ name }) => name === "Gate")?.id ?? "";
    const id = fillDose(dot(), formOf({ drill: gate, start: ago(2), reps: "99", draft: randomUUID() }));
    const form = loadDrillForm(dot(), id, {});
    expect(["drill", "start", "reps", "daysAWeek", "minutes"].map((name) => typedIn(form, name))).toEqual([
      ...[gate, ago(2), "7", "3", ""],
    ]);
    expect(form.parts.at(-1)?.explains).toContain("Filled in as it was given from");
  });

  it("of a drill of which nothing is known only the day is filled in: what was typed stays", () => {
    const typed = { reps: "99", words: "after school", stop: "at the gate" };
    const id = fillDose(dot(), formOf({ drill: "new", start: ago(2), ...typed, draft: randomUUID() }));
    const form = loadDrillForm(dot(), id, {});
    expect(Object.keys(typed).map((name) => typedIn(form, name))).toEqual(Object.values(typed));
    expect(typedIn(form, "remeasureOn")).not.toBe("");
  });
});

describe("practice asked and logged", () => {
  it("nothing logged is told apart from none; what is logged is counted in days, minutes and balls with its span", async () => {
    const [first] = drills();
    expect(await markupOf(first?.id ?? "")).toContain("nothing logged of 17 asked");
    const day = ago(20);
    const week = { week: mondayOf(day), drill: first?.id ?? "", source: "told" };
    expect(logPractice(dot(), formOf({ ...week, [`minutes.${day}`]: "12", [`balls.${day}`]: "30" })).kind).toBe(
      "logged",
    );
    const markup = await markupOf(first?.id ?? "");
    expect(markup).toContain("one day logged of 17 asked, 12 minutes of 170 asked, 30 balls");
    expect(markup).toContain("may have been practised");
    expect(markup).toContain("7 days kept free before the film ask for no practice");
    const list = findTable(loadDrills(dot()), 0);
    expect(list?.columns.map(({ label }) => label)).toContain("Practice");
    expect(list?.rows.at(-1)?.cells.join("|")).toContain("one day logged of 17 asked");
    const season = (await loadSeason(dot(), undefined)).drills;
    expect(season?.rows[0]?.cells.at(-1)).toContain("one day logged of 17 asked");
  });
});

describe("at the day to be measured again", () => {
  it("the list of drills that are due names it, longest first", () => {
    const due = loadDrillsDue(viewer);
    expect(due.heading).toBe("One drill is due to be measured again");
    expect(due.items[0]?.text).toMatch(/due for 9 days, (?:no film since|filmed on)/);
    expect(due.table?.rows[0]?.href).toBe(due.items[0]?.href);
  });

  it("without a reason nothing is decided and the form comes back; kept, it goes on until the next day, and that is told", async () => {
    const id = drills()[0]?.id ?? "";
    const refused = decideDrill(dot(), id, formOf({ decision: "keep", why: "", next: ago(-14) }));
    if (refused.kind !== "refused") throw new Error("decided without a reason");
    expect(typedIn((await loadDecide(dot(), id, refused.draftId))?.form as FormModel, "decision")).toBe("keep");
    const kept = decideDrill(dot(), id, formOf({ decision: "keep", why: "half way", next: ago(-14) }));
    if (kept.kind !== "decided") throw new Error("refused");
    expect(pageAfter("s", id, kept)).toBe(`/students/s/drills/${id}`);
    expect(drills()[0]).toMatchObject({ remeasureOn: ago(-14), end: null });
    expect(loadDrillsDue(viewer).items).toEqual([]);
    expect(findTable(await loadDrillPage(dot(), id), 0)?.rows[0]?.cells).toEqual([
      ...[expect.any(String), "kept", "half way", expect.any(String), expect.stringContaining("Coach Lark")],
    ]);
  });

  it("sent twice it is decided once", () => {
    const id = drills()[0]?.id ?? "";
    const form = () =>
      formOf({ decision: "keep", why: "again", next: ago(-21), draft: "0d0d0d0d-0d0d-4d0d-8d0d-0d0d0d0d0d0d" });
    expect(decideDrill(dot(), id, form())).toEqual(decideDrill(dot(), id, form()));
    expect(readDrillDecisions(viewer.db, dot().student)).toHaveLength(2);
  });

  it("changed for another it ends today for its reason, and the next form proposes another one of the library", async () => {
    const given = drills()[0];
    const changed = decideDrill(dot(), given?.id ?? "", formOf({ decision: "change-drill", why: "no effect" }));
    if (changed.kind !== "decided") throw new Error("refused");
    expect(drills()[0]).toMatchObject({ end: viewer.today, endWhy: "no effect" });
    const next = new URL(pageAfter("s", given?.id ?? "", changed), "http://x").searchParams;
    const form = loadDrillForm(dot(), randomUUID(), { for: next.get("for") ?? "", after: next.get("after") ?? "" });
    const gate = readDrills(viewer.db, viewer.scope).find(({ name }) => name === "Gate")?.id;
    expect(typedIn(form, "drill")).toBe(gate);
    const late = decideDrill(dot(), given?.id ?? "", formOf({ decision: "stop", why: "again" }));
    expect(late.kind).toBe("refused");
    expect((await loadDecide(dot(), given?.id ?? "", randomUUID()))?.form).toBeNull();
    expect(await loadDecide(dot(), "nobody", randomUUID())).toBeNull();
  });

  it("another goal leads to the page of the goal, and the drill goes on", () => {
    const running = drills().find(({ end }) => end === null);
    const goal = decideDrill(
      dot(),
      running?.id ?? "",
      formOf({ decision: "change-goal", why: "too narrow", next: ago(-7) }),
    );
    if (goal.kind !== "decided") throw new Error("refused");
    expect(pageAfter("s", running?.id ?? "", goal)).toBe("/students/s/hinge/goal");
  });
});

describe("pain or a pause comes first", () => {
  it("in a pause the form says stop, saves nothing without the coach’s word, and goes on with it", async () => {
    expect((await addEvent(dot(), formOf({ kind: "pause", day: ago(1), endDay: ago(-3) }))).kind).toBe("added");
    const form = loadDrillForm(dot(), randomUUID(), { for: "hinge" });
    expect(form.parts[0]?.margin).toBe("Stop first");
    for (const said of ["A pause is in force", "no drill through it", "licensed clinician"])
      expect(form.parts[0]?.explains).toContain(said);
    expect(loadPrescribe(dot(), "hinge")?.stop.join(" ")).toContain("Stop first");
    const before = drills().length;
    const refused = giveDrill(dot(), untouched(form));
    if (refused.kind !== "refused") throw new Error("given in a pause");
    const back = loadDrillForm(dot(), refused.draftId, {});
    expect(back.parts[0]?.fields[0]?.error).toContain("Tick it only where it is so");
    expect(drills()).toHaveLength(before);
    const word = untouched(form);
    word.set("goOn", "yes");
    give(word);
    expect(drills()).toHaveLength(before + 1);
  });

  it("every page and form of a drill says that pain stops it, and a young body’s load is named where it is much", async () => {
    expect(
      loadDrillForm(dot(), randomUUID(), {})
        .parts.map(({ explains }) => explains)
        .join(" "),
    ).toContain("Pain stops");
    const id = drills().at(-1)?.id ?? "";
    expect(await markupOf(id)).toContain("Pain stops every drill");
    expect((await loadDecide(dot(), id, randomUUID()))?.page.cautions.join(" ")).toContain("Pain stops every drill");
    // Two drills of 20 repeats and one of 7: 20 × 5 + 20 × 5 + 7 × 3 stay within the usual, minutes 100 don't.
    expect(loadDrills(dot()).cautions[0]).toMatch(/^Asked of Dot at 1\d years: 100 minutes of drills a week/);
  });
});
