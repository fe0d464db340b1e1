import { randomUUID } from "node:crypto";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadFundamentalSource } from "@/app/_server/season/load-fundamental";
import { loadPractice, logPractice, movePracticeBack } from "@/app/_server/season/practice-desk";
import { addStudent } from "@/app/_server/season/student-desk";
import { HappenPage } from "@/app/_ui/happen/happen-page";
import { PracticeForm } from "@/app/_ui/practice/practice-form";
import { readPractice } from "@/db/read/practice";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { mondayOf } from "@/lib/domain/practice";
import { buildSeasonChart } from "@/lib/report/build-season-chart";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { fillSeason } from "./reread-season";

let viewer: Viewer;
let remove: () => void;
const form = formOf;
const dot = (): StudentViewer => firstStudent(viewer);
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const who = { hand: "right", birthYear: String(Number(viewer.today.slice(0, 4)) - 5), clubs: "", zone: "UTC" };
  await addStudent(viewer, form({ alias: "Dot", ...who, consentGivenBy: "a parent", consentOnPaper: "yes" }));
  fillSeason(viewer, dot().student);
  insertDrill(viewer.db, viewer.scope, { id: "d1", name: "Wall", fundamentalId: "hinge", how: "", cautions: "" });
  const start = dayFromNumber(dayNumber(viewer.today) - 60);
  insertAssignment(viewer.db, dot().student, {
    ...{ id: "g1", drillId: "d1", fundamentalId: "hinge", start, end: null, dose: "20" },
  });
});
afterAll(() => remove());

const lastMonday = (): string => mondayOf(dayFromNumber(dayNumber(viewer.today) - 7));
const field = (model: ReturnType<typeof loadPractice>["form"], name: string): string =>
  model.hidden.find((each) => each.name === name)?.value ?? "";

it("logs a week at once, once however often it is sent, and draws it on the fundamental's chart", async () => {
  const monday = lastMonday();
  const { form: model } = loadPractice(dot(), { week: monday, draft: randomUUID() });
  expect(model.days).toHaveLength(7);
  expect(model.fields.find(({ name }) => name === "drill")?.value).toBe("g1");
  const tuesday = dayFromNumber(dayNumber(monday) + 1);
  const typed = { draft: field(model, "draft"), week: monday, drill: "g1", felt: "", source: "told" };
  const data = form({
    ...typed,
    [`minutes.${monday}`]: "15",
    [`minutes.${tuesday}`]: "20",
    [`balls.${tuesday}`]: "30",
  });
  expect(logPractice(dot(), data)).toEqual({ kind: "logged", week: monday });
  expect(logPractice(dot(), data)).toEqual({ kind: "logged", week: monday });
  expect(readPractice(viewer.db, dot().student).map(({ day, minutes, balls }) => [day, minutes, balls])).toEqual([
    [monday, 15, null],
    [tuesday, 20, 30],
  ]);
  const chart = buildSeasonChart(viewer.words, {
    ...(await loadFundamentalSource(dot(), "hinge", "iron")),
    from: null,
  });
  expect(chart.practice?.lanes.map(({ label }) => label)).toEqual([
    "practice, minutes a week, 35 at most",
    "practice, balls a week, 30 at most",
  ]);
  expect(chart.summary).toContain(
    "Practice was logged on 2 days of one week, 35 minutes, 30 balls in all; the family told",
  );
});

it("asks about an absurd day, keeps what was typed, and takes it when it is confirmed; a young body's load is said", () => {
  const typed = { week: viewer.today, [`minutes.${viewer.today}`]: "301" };
  const outcome = logPractice(dot(), form(typed));
  if (outcome.kind !== "refused") throw new Error("taken unasked");
  const again = loadPractice(dot(), { draft: outcome.draftId });
  const markup = renderToStaticMarkup(createElement(PracticeForm, { model: again.form, action: "/x" }));
  expect(markup).toContain("a slip of the finger?");
  expect(markup).toContain('value="301"');
  expect(again.page.cautions.join(" ")).not.toMatch(/of practice this week/);
  expect(logPractice(dot(), form({ ...typed, confirmMuch: "yes" })).kind).toBe("logged");
  expect(loadPractice(dot(), {}).page.cautions[0]).toMatch(/^5 hours of practice this week, at 5 years/);
});

it("an entry is taken back and put back, and stays in the list", () => {
  const entry = readPractice(viewer.db, dot().student).at(-1);
  if (!entry) throw new Error("no entry");
  const page = () => loadPractice(dot(), {}).page;
  const markup = renderToStaticMarkup(createElement(HappenPage, { model: page(), press: "/x" }));
  expect(markup).toContain(entry.id);
  const title = page().title;
  expect(movePracticeBack(dot(), entry.id, "take")).toBe("updated");
  expect([page().parts[1]?.table?.rows.length, page().parts[1]?.table?.rows[0]?.tone]).toEqual([3, "quiet"]);
  expect(page().title).not.toBe(title);
  expect(movePracticeBack(dot(), entry.id, "put")).toBe("updated");
  expect(page().title).toBe(title);
});

it("no day that hasn't come is offered, and a day that isn't one shows this week", () => {
  const days = Object.values(loadPractice(dot(), { week: "2999-01-01" }).form.days);
  expect(days.length).toBe(dayNumber(viewer.today) - dayNumber(mondayOf(viewer.today)) + 1);
  expect(loadPractice(dot(), { week: "yesterday" }).form.days).toHaveLength(days.length);
});
