import { spawnSync } from "node:child_process";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { planLot, stepLot } from "@/app/_server/fair/fair-desk";
import { loadKeptTests } from "@/app/_server/fair/fair-source";
import { loadFairForm, loadFairTests, loadLotPart } from "@/app/_server/fair/load-fair-tests";
import { armOfLot } from "@/app/_server/fair/lot";
import { drawLot, drillOfArm } from "@/app/_server/fair/lot-desk";
import { familyTask } from "@/app/_server/family/family-task";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { giveDrill } from "@/app/_server/season/drill-desk";
import { loadDrillForm } from "@/app/_server/season/load-drills";
import { addStudent } from "@/app/_server/season/student-desk";
import { FairTests } from "@/app/_ui/fair/fair-tests";
import { readDrills } from "@/db/read/drills";
import { readStudents } from "@/db/read/students";
import { insertDrill } from "@/db/write/drills";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { wordsFor } from "@/lib/words/catalogue";
import { builtScript } from "../../built-script";
import { formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { enterFilm } from "./reread-season";

/** Days since the draws when the look is taken. */
const SINCE = 60;

let viewer: Viewer;
let remove: () => void;
const daysAgo = (days: number): string => dayFromNumber(dayNumber(viewer.today) - days);
const students = (): StudentViewer[] =>
  readStudents(viewer.db, viewer.scope).map(({ id }) => {
    const student = admitToStudent(viewer, id);
    if (student === null) throw new Error(id);
    return { ...viewer, student };
  });
const film = (of: StudentViewer, day: string, value: number): void =>
  enterFilm(
    viewer,
    of.student,
    { id: `${of.student.studentId}-${day}`, day, reference: null, now: `${day}T10:00:00.000Z` },
    [value - 1, value, value + 1],
  );
const test = () => {
  const [kept] = loadKeptTests(viewer);
  if (kept === undefined) throw new Error("no test");
  return kept;
};
const PLAN = { first: "gate", second: "freeze", least: "20", spread: "8", looks: "1", days: "42" };

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const drill = { fundamentalId: "hinge" as const, how: "Slowly.", cautions: "", dose: "" };
  const asked = { reps: 10, minutesADay: null, daysAWeek: 5, remeasureDays: null };
  for (const id of ["gate", "freeze"]) insertDrill(viewer.db, viewer.scope, { id, name: id, ...drill, ...asked });
  const who = { hand: "right", birthYear: "2004", clubs: "", zone: "UTC", consentGivenBy: "a parent" };
  for (let at = 0; at < 22; at++) await addStudent(viewer, formOf({ alias: `S${at}`, ...who, consentOnPaper: "yes" }));
  for (const [at, each] of students().entries())
    for (const day of [100, 90, 80]) film(each, daysAgo(day), 40 + (at % 5));
  await loadRules(viewer);
});
afterAll(() => remove());

describe("a test of two drills by the lot", () => {
  it("is planned with as many students as its difference takes, which the form says before; one at a time for a fundamental", () => {
    expect(readDrills(viewer.db, viewer.scope)).toHaveLength(2);
    const wrong = planLot(viewer, formOf({ ...PLAN, spread: "" }));
    expect(wrong).toMatchObject({ kind: "refused" });
    const draftId = wrong.kind === "refused" ? wrong.draftId : "";
    expect(loadFairForm(viewer, draftId).parts[0]?.fields.find(({ name }) => name === "spread")?.error).toMatch(
      /^Fewer/,
    );
    expect(planLot(viewer, formOf(PLAN))).toEqual({ kind: "planned" });
    // A difference of 2.5 spreads takes the fewest that are ever drawn.
    expect(test().test.students).toBe(20);
    const again = planLot(viewer, formOf(PLAN));
    expect(again.kind === "refused" && loadFairForm(viewer, again.draftId).refusal).toMatch(/one runs for this/);
    expect(loadFairTests(viewer, "planned").tests[0]?.said).toBe("It can’t be told yet: no look was taken.");
  });

  it("is drawn with one press on the page that gives a drill, once, and the drill that the lot says is chosen there", () => {
    const [first] = students();
    if (first === undefined) throw new Error("nobody");
    const part = loadLotPart(first);
    expect(part?.press?.label).toBe("Draw");
    expect(drawLot(first, formOf({ testId: "another" }))).toBe("unchanged");
    expect(drawLot(first, formOf({ ...part?.press?.hidden }))).toBe("drawn");
    expect(drawLot(first, formOf({ ...part?.press?.hidden }))).toBe("unchanged");
    const [draw] = test().draws;
    const drill = drillOfArm(test().test, draw?.arm ?? 0);
    expect(loadLotPart(first)).toMatchObject({ heading: `The lot says ${drill}`, press: null });
    const form = loadDrillForm(first, "0f0f0f0f-0f0f-4f0f-8f0f-0f0f0f0f0f0f", {});
    expect(form.parts.flatMap(({ fields }) => fields).find(({ name }) => name === "drill")?.value).toBe(drill);
    expect(giveDrill(first, formOf({ drill, start: viewer.today, reps: "10", daysAWeek: "5" })).kind).toBe("given");
    expect(loadLotPart(first)).toBeNull();
    // The family is told in one sentence that chance chose, and that it may say no.
    expect(familyTask(first, viewer.today)?.lot).toMatch(/^Two drills fit here, and chance chose this one\./);
    expect(familyTask({ ...first, words: wordsFor("de") }, viewer.today)?.lot).toMatch(/das Los hat diese gewählt/);
  });

  it("stands in the tracks that the comparison reads as a drill by chance, which compare-drills takes as they are", () => {
    const run = (script: string, args: readonly string[], input: string) =>
      spawnSync(process.execPath, [builtScript(`app/_commands/${script}.ts`), ...args], { input, encoding: "utf8" });
    const written = run("tracks", ["--academy", "own", "--drills", "hinge"], "");
    expect([written.stderr, written.status]).toEqual(["", 0]);
    const lines = written.stdout
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line) as ComparedTrack);
    expect(lines).toHaveLength(22);
    expect(lines.flatMap(({ drills }) => drills)).toMatchObject([{ start: viewer.today, assigned: "chance" }]);
    const compared = run("compare-drills", [], written.stdout);
    expect([JSON.parse(compared.stdout).errors.slice(0, 2), compared.status]).toEqual([[], 0]);
    expect(JSON.parse(compared.stdout)).toMatchObject({ tracks: 22, unit: "deg", errors: [] });
    expect(run("tracks", ["--drills", "nothing"], "")).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(/^There is no/),
    });
    expect(run("tracks", ["--club", "iron"], "").status).toBe(2);
  });

  it("gives both drills about as often, in the order of its seed, and nobody to whom it isn't offered draws", () => {
    for (const each of students().slice(1, test().test.students)) drawLot(each, formOf({ testId: test().test.id }));
    const { test: plan, draws } = test();
    expect(draws.map(({ place }) => place)).toEqual(draws.map((_, at) => at));
    for (const { place, arm, coachId } of draws) expect(armOfLot(plan, coachId, place)).toBe(arm);
    const second = draws.filter(({ arm }) => arm === 1).length;
    expect(Math.abs(2 * second - draws.length)).toBeLessThanOrEqual(6);
    // All have drawn.
    const last = students().at(-1);
    expect(draws).toHaveLength(20);
    expect(last === undefined ? "nobody" : loadLotPart(last)).toBeNull();
  });

  it("is looked at when its look is due and not before; what it says is kept, words first, and it is over then", async () => {
    const step = (wish: string) => stepLot(viewer, formOf({ testId: test().test.id, wish }));
    expect(step("look")).toBe("unchanged");
    viewer.db.sqlite.prepare("UPDATE fair_allocation SET day = ?").run(daysAgo(SINCE));
    for (const { studentId, arm } of test().draws) {
      const of = students().find(({ student }) => student.studentId === studentId);
      if (of !== undefined) for (const day of [40, 30]) film(of, daysAgo(day), arm === 1 ? 70 : 45);
    }
    await loadRules(viewer);
    const [due] = loadFairTests(viewer, undefined).tests;
    expect(due?.presses.map(({ label }) => label)).toEqual(["Take look 1", "End the test of gate and freeze for good"]);
    expect(step("look")).toBe("looked");
    const { steps, values, draws } = test();
    expect(values).toHaveLength(draws.length);
    const { figures } = steps[0] ?? {};
    // By hand: from 40-odd to 70 is nearer by its whole, and to 45 by 5 less the head start.
    expect(figures?.estimate ?? 0).toBeGreaterThan(19);
    expect(figures?.have.reduce((sum, have) => sum + have)).toBe(draws.length);
    const page = loadFairTests(viewer, "looked");
    const [part] = page.tests;
    expect(part?.presses).toEqual([]);
    expect(part?.margin).toBe("Over");
    expect(part?.said).toMatch(
      figures?.says === "second" ? /^freeze works better than gate: \+2\d/ : /^It can’t be told/,
    );
    const html = renderToStaticMarkup(createElement(FairTests, { model: page, step: "/x" }, null));
    expect(html.indexOf(part?.said.slice(0, 20) ?? "?")).toBeLessThan(html.indexOf("Drawn"));
    expect(step("look")).toBe("unchanged");
    expect(step("end")).toBe("unchanged");
  });

  it("that is ended says no more, and another may be planned then", () => {
    expect(planLot(viewer, formOf({ ...PLAN, looks: "2" }))).toEqual({ kind: "planned" });
    expect(stepLot(viewer, formOf({ testId: test().test.id, wish: "end" }))).toBe("ended");
    const part = loadFairTests(viewer, "ended").tests.find(({ id }) => id === test().test.id);
    expect(part?.looks[0]).toMatch(/^Ended early on /);
    expect(planLot(viewer, formOf(PLAN))).toEqual({ kind: "planned" });
  });
});
