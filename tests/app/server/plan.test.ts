import { randomUUID } from "node:crypto";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadAsked } from "@/app/_server/plan/load-asked";
import { loadDue, loadDuePage } from "@/app/_server/plan/load-due";
import { loadPlan } from "@/app/_server/plan/load-plan";
import { keepPlanForm, movePlanBack, noteReminded, tellPlan } from "@/app/_server/plan/plan-desk";
import { addEvent, moveEventBack } from "@/app/_server/season/event-desk";
import { loadStudentWork } from "@/app/_server/season/load-work";
import { addStudent } from "@/app/_server/season/student-desk";
import { PlanPage } from "@/app/_ui/plan/plan-page";
import { readFilmPlans } from "@/db/read/film-plans";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { enterFilm, fillSeason } from "./reread-season";

let viewer: Viewer;
let remove: () => void;
const dot = (): StudentViewer => firstStudent(viewer);
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const who = { hand: "left", birthYear: String(Number(viewer.today.slice(0, 4)) - 12), clubs: "", zone: "UTC" };
  await addStudent(viewer, formOf({ alias: "Dot", ...who, consentGivenBy: "a parent", consentOnPaper: "yes" }));
});
afterAll(() => remove());

const day = (ahead: number): string => dayFromNumber(dayNumber(viewer.today) + ahead);
const nothing = async () => {};
const drawn = ({ page, form }: Awaited<ReturnType<typeof loadPlan>>): string =>
  renderToStaticMarkup(
    createElement(PlanPage, {
      model: page,
      form,
      actions: { keep: nothing, workOut: nothing, back: nothing, remind: nothing },
    }),
  );
function sent(fundamentals: readonly string[], change: Readonly<Record<string, string>> = {}): FormData {
  const data = formOf({ clubGroup: "iron", swings: "4", dueOn: day(7), draft: randomUUID(), version: "0", ...change });
  for (const id of fundamentals) data.append("fundamentals", id);
  return data;
}

it("plans the first film of whoever was never filmed, and draws a whole page of it", async () => {
  const plan = await loadPlan(dot(), { draft: randomUUID() });
  expect(plan.page.read.items.map(({ name }) => name)).toEqual(["Trail-hand V", "Lead-hand V", "Foot line"]);
  expect(plan.page.send?.message.text).toContain("by ");
  const markup = drawn(plan);
  for (const text of ["textarea", "Keep as told", "Work it out anew", "4 big steps"]) expect(markup).toContain(text);
});

it("works out what a kept form asks for, and refuses what can't be kept with the form as typed", async () => {
  fillSeason(viewer, dot().student);
  const draft = keepPlanForm(dot(), sent(["hinge"], { swings: "8" }));
  const worked = await loadPlan(dot(), { draft });
  expect(worked.page.read.items.map(({ name, facts }) => `${name}: ${facts}`)).toEqual([
    "Wrist hinge: 8 swings, face-on, lead arm parallel",
  ]);
  const refused = await tellPlan(dot(), sent([], { swings: "0", dueOn: day(-1) }));
  if (refused.kind !== "refused") throw new Error("kept");
  const { form } = await loadPlan(dot(), { draft: refused.draftId });
  const errors = form.parts.flatMap(({ fields }) => fields.map(({ error }) => error !== ""));
  expect([errors, form.refusal]).toEqual([[true, true, true], "Nothing is kept yet: 3 fields need another look."]);
  expect(readFilmPlans(viewer.db, dot().student)).toEqual([]);
});

it("keeps a plan once as it was told; it is awaited, reminded of, taken back and put back", async () => {
  const data = sent(["hinge", "foot-line"], { dueOn: viewer.today });
  const first = await tellPlan(dot(), data);
  expect(first).toEqual({ kind: "told", clubGroup: "iron" });
  expect(await tellPlan(dot(), data)).toEqual(first);
  const [plan] = readFilmPlans(viewer.db, dot().student);
  expect(readFilmPlans(viewer.db, dot().student)).toHaveLength(1);
  expect(plan?.body).toEqual({
    fundamentals: [
      { id: "hinge", swings: 4 },
      { id: "foot-line", swings: 3 },
    ],
    views: ["face-on", "down-the-line"],
    care: ["yaw", "offset"],
  });
  const again = await loadPlan(dot(), { told: "yes" });
  expect(again.page.awaited?.text).toMatch(/^Told on /);
  expect(again.page.read.items).toHaveLength(2);
  expect(again.page.notices[0]).toMatch(/^Kept as told/);
  expect(noteReminded(dot(), plan?.id ?? "")).toBe("updated");
  expect(movePlanBack(dot(), plan?.id ?? "", "take")).toBe("updated");
  expect((await loadPlan(dot(), {})).page.awaited).toBeNull();
  expect(noteReminded(dot(), plan?.id ?? "")).toBe("unchanged");
  expect(movePlanBack(dot(), plan?.id ?? "", "put")).toBe("updated");
});

it("plans without a view that was asked for in two films and didn't come", async () => {
  for (const at of [1, 2]) {
    await tellPlan(dot(), sent(["hinge", "foot-line"]));
    const now = new Date(Date.now() + at * 60_000).toISOString();
    const film = { id: `late${at}`, day: viewer.today, reference: null, now };
    // Two films of one day, each entered after its plan.
    viewer.db.sqlite.exec(
      `UPDATE film_plan SET recorded_at = '${new Date(Date.now() + at * 60_000 - 1000).toISOString()}' WHERE recorded_at = (SELECT max(recorded_at) FROM film_plan)`,
    );
    enterFilm({ ...viewer, name: `${viewer.name} ${at}` }, dot().student, film, [88, 89, 90, 91]);
    viewer.db.sqlite.exec(`UPDATE session SET sequence = sequence + ${at} * 10 WHERE id = 'late${at}'`);
  }
  const { page } = await loadPlan(dot(), {});
  expect(page.read.items.map(({ name }) => name)).not.toContain("Foot line");
  expect(page.film?.heading).toBe("One video: from the front");
  expect([loadAsked(dot()).get("foot-line"), loadAsked(dot()).get("hinge")]).toEqual([2, 0]);
  expect(loadStudentWork(dot(), "iron", "left-out").work.asked.get("foot-line")).toBe(2);
});

it("asks for nothing and keeps nothing while practice rests", async () => {
  const kept = readFilmPlans(viewer.db, dot().student).length;
  const pause = await addEvent(dot(), formOf({ kind: "pause", day: viewer.today, endDay: "" }));
  if (pause.kind !== "added") throw new Error("no pause");
  expect((await loadPlan(dot(), {})).page.send).toBeNull();
  expect((await tellPlan(dot(), sent(["hinge"]))).kind).toBe("refused");
  expect(readFilmPlans(viewer.db, dot().student)).toHaveLength(kept);
  await moveEventBack(dot(), pause.eventId, "take");
  expect((await loadPlan(dot(), {})).page.send).not.toBeNull();
});

it("lists a promise that has passed until its film comes; not of whoever is on hold or has no consent", async () => {
  const plans = readFilmPlans(viewer.db, dot().student);
  for (const { id } of plans) movePlanBack(dot(), id, "take");
  await tellPlan(dot(), sent(["hinge"], { dueOn: viewer.today }));
  // After the films of above, which bear a later minute of this day.
  const told = new Date(Date.now() + 600_000).toISOString();
  viewer.db.sqlite.exec(`UPDATE film_plan SET recorded_at = '${told}' WHERE voided_at IS NULL`);
  expect(loadDue(viewer).films).toEqual([]);
  const later = { ...viewer, today: day(3) };
  expect(loadDuePage(later).films.table?.rows.map(({ cells }) => cells.slice(0, 3))).toEqual([
    ["Dot", expect.any(String), "3"],
  ]);
  expect(loadDue(later).films).toMatchObject([{ studentId: dot().student.studentId, alias: "Dot", remindedAt: null }]);
  expect(loadDuePage(later).reminders?.items[0]?.message.text).toContain("4 swings");
  const pause = await addEvent(dot(), formOf({ kind: "pause", day: viewer.today, endDay: "" }));
  if (pause.kind !== "added") throw new Error("no pause");
  expect(loadDue(later).films).toHaveLength(0);
  await moveEventBack(dot(), pause.eventId, "take");
  viewer.db.sqlite.exec(`UPDATE consent SET until_day = '${day(2)}'`);
  expect(loadDue(later).films).toHaveLength(0);
  viewer.db.sqlite.exec("UPDATE consent SET until_day = NULL");
  expect(loadDue(later).films).toHaveLength(1);
});
