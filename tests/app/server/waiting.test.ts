import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { giveDrill } from "@/app/_server/season/drill-desk";
import { loadDrills } from "@/app/_server/season/load-drills";
import { addStudent } from "@/app/_server/season/student-desk";
import { moveWaiting } from "@/app/_server/season/waiting-desk";
import { HappenPage } from "@/app/_ui/happen/happen-page";
import { readWaiting } from "@/db/read/waiting";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
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
  await loadRules(viewer);
});
afterAll(() => remove());

const before = (days: number): string => dayFromNumber(dayNumber(viewer.today) - days);
const press = (wish: string, fundamentalId = "hinge") => moveWaiting(dot(), formOf({ wish, fundamentalId }));
const offered = () =>
  loadDrills(dot())
    .parts.at(-1)
    ?.press?.buttons.map((each) => `${each?.hidden.wish} ${each?.hidden.fundamentalId}`) ?? [];
const waits = () => readWaiting(viewer.db, dot().student).filter(({ voidedAt }) => voidedAt === null);

it("is marked from today with one press, shown on the page of drills, and ended with another", () => {
  expect(offered()).toContain("begin hinge");
  expect(press("begin")).toBe("updated");
  expect(press("begin")).toBe("unchanged");
  expect(waits()).toMatchObject([{ fromDay: viewer.today, untilDay: null, who: viewer.name }]);
  expect(offered()).toContain("end hinge");
  const page = renderToStaticMarkup(createElement(HappenPage, { model: loadDrills(dot()), press: "/x" }));
  expect(page).toContain("One thing waits on purpose");
  // Nothing waited between two presses of one day.
  expect(press("end")).toBe("updated");
  expect([waits(), press("end")]).toEqual([[], "unchanged"]);
});

it("is of what is measured and has no drill alone", () => {
  expect(press("begin", "nothing")).toBe("unchanged");
  expect(press("begin")).toBe("updated");
  viewer.db.sqlite.prepare("UPDATE waiting SET from_day = ? WHERE voided_at IS NULL").run(before(30));
  const drill = { drill: "new", name: "Freeze", fundamental: "hinge", how: "Stop half way." };
  expect(giveDrill(dot(), formOf({ ...drill, start: before(3), reps: "10", daysAWeek: "5" })).kind).toBe("given");
  // The drill ended the wait, on the day before its first.
  expect(waits()).toMatchObject([{ fromDay: before(30), untilDay: before(4) }]);
  expect(offered()).not.toContain("begin hinge");
  expect(press("begin")).toBe("unchanged");
});
