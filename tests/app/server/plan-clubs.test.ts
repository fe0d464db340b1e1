import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, it, vi } from "vitest";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadDuePage } from "@/app/_server/plan/load-due";
import { loadPlan } from "@/app/_server/plan/load-plan";
import { keepPlanForm, tellPlan } from "@/app/_server/plan/plan-desk";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { addStudent } from "@/app/_server/season/student-desk";
import { pressReminded, submitPlanBack } from "@/app/(coach)/students/[studentId]/plan/actions";
import { readFilmPlans } from "@/db/read/film-plans";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { enterFilm, fillSeason } from "./reread-season";

// A press is made by whoever the test says: there is no request here that a gate could read.
const gate = vi.hoisted(() => ({ viewer: null as unknown }));
vi.mock("@/app/_server/gate", async (load) => ({
  ...(await load<typeof import("@/app/_server/gate")>()),
  requireStudent: async () => gate.viewer,
}));

let viewer: Viewer;
let remove: () => void;
const dot = (): StudentViewer => firstStudent(viewer);
const day = (ahead: number): string => dayFromNumber(dayNumber(viewer.today) + ahead);
const later = (): StudentViewer => ({ ...dot(), today: day(3) });

/** Eight films with irons, two with the driver, and a plan that was told for the driver. */
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const who = { hand: "left", birthYear: String(Number(viewer.today.slice(0, 4)) - 12), clubs: "", zone: "UTC" };
  await addStudent(viewer, formOf({ alias: "Dot", ...who, consentGivenBy: "a parent", consentOnPaper: "yes" }));
  fillSeason(viewer, dot().student);
  for (const ago of [45, 35]) {
    const film = { id: `driver${ago}`, day: day(-ago), reference: null, now: `${day(-ago)}T18:00:00.000Z` };
    enterFilm(viewer, dot().student, { ...film, clubGroup: "driver" }, [70, 71, 72]);
  }
  expect(await tellPlan(dot(), typed("driver", "7"))).toEqual({ kind: "told", clubGroup: "driver" });
});
afterAll(() => remove());

function typed(clubGroup: string, swings: string): FormData {
  const data = formOf({ clubGroup, swings, dueOn: viewer.today, draft: randomUUID(), version: "0" });
  data.append("fundamentals", "hinge");
  return data;
}

const shown = ({ page, form }: Awaited<ReturnType<typeof loadPlan>>) => ({
  club: page.clubGroups?.links.find(({ current }) => current === "yes")?.href.split("=")[1],
  asks: page.send?.message.text.match(/\d+ swings with [^,]+/)?.[0],
  read: page.read.items.map(({ href }) => href?.split("?")[1]),
  sends: form.hidden.find(({ name }) => name === "clubGroup")?.value,
});

it("opens in the clubs of what is awaited, and says it to the family with them", async () => {
  const driver = { club: "driver", asks: "7 swings with your driver", read: ["club=driver"], sends: "driver" };
  expect(shown(await loadPlan(dot(), { draft: randomUUID() }))).toEqual(driver);
  expect(shown(await loadPlan(dot(), { club: "driver" }))).toEqual(driver);
});

it("shows other clubs as they were asked for, without what was told for the driver", async () => {
  const iron = shown(await loadPlan(dot(), { club: "iron" }));
  expect(iron).toMatchObject({ club: "iron", read: expect.arrayContaining(["club=iron"]), sends: "iron" });
  expect(iron.asks).not.toMatch(/^7 |driver/);
});

it("is led to with its clubs from the list of what is due and from the brief", async () => {
  const href = `/students/${dot().student.studentId}/plan?club=driver`;
  const due = loadDuePage({ ...viewer, today: day(3) });
  expect([due.films.table?.rows[0]?.href, due.reminders?.items[0]?.plan.href]).toEqual([href, href]);
  expect(due.reminders?.items[0]?.message.text).toContain("7 swings with your driver");
  const { brief } = await loadRoster({ ...viewer, today: day(3) }, { sort: undefined, page: undefined });
  expect(JSON.stringify(brief)).toContain(`"${href}"`);
});

async function ledTo(press: (data: FormData) => Promise<void>, hidden: Readonly<Record<string, string>>) {
  gate.viewer = later();
  const error: unknown = await press(formOf(hidden)).catch((thrown: unknown) => thrown);
  return new URL(String((error as { digest?: string }).digest).split(";")[2] ?? "", "http://here");
}

it("a press leads back to the same clubs and the form as it was changed", async () => {
  const draft = keepPlanForm(dot(), typed("driver", "9"));
  const { page } = await loadPlan(later(), { draft });
  const [told] = page.told?.presses ?? [];
  if (!page.awaited?.remind || !told) throw new Error("nothing to press");
  for (const [press, hidden] of [
    [pressReminded, page.awaited.remind.hidden],
    [submitPlanBack, told.hidden],
  ] as const) {
    const { pathname, searchParams } = await ledTo(press, hidden);
    expect(pathname).toBe(`/students/${dot().student.studentId}/plan`);
    expect(Object.fromEntries(searchParams)).toEqual({ draft, club: "driver" });
    expect(shown(await loadPlan(later(), Object.fromEntries(searchParams))).asks).toBe("9 swings with your driver");
  }
  expect(readFilmPlans(viewer.db, dot().student)[0]).toMatchObject({
    ...{ remindedAt: expect.any(String), voidedAt: expect.any(String) },
  });
  const strange = { ...told.hidden, wish: "put", club: "https://elsewhere", draft: "../x" };
  expect((await ledTo(submitPlanBack, strange)).search).toBe("");
});
