import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, expect, it } from "vitest";
import { practiceByDrill } from "@/app/_server/drill/drill-since";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadReview } from "@/app/_server/season/load-review";
import { loadSeason } from "@/app/_server/season/load-season";
import { addStudent } from "@/app/_server/season/student-desk";
import { Review } from "@/app/_ui/review/review";
import { drillAssignment } from "@/db/schema-work";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { insertEvent } from "@/db/write/events";
import { insertPractice } from "@/db/write/practice";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { fillSeason } from "./reread-season";

let viewer: Viewer;
let remove: () => void;
const dot = (): StudentViewer => firstStudent(viewer);
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const who = { hand: "right", birthYear: String(Number(viewer.today.slice(0, 4)) - 12), clubs: "", zone: "UTC" };
  await addStudent(viewer, formOf({ alias: "Dot", ...who, consentGivenBy: "a parent", consentOnPaper: "yes" }));
});
afterAll(() => remove());

it("is whole before the first film", async () => {
  const page = await loadReview(dot(), undefined);
  expect(page.table).toBeNull();
  expect(renderToStaticMarkup(createElement(Review, { model: page }))).toContain("no film counts yet");
});

it("says once that pain stops every drill, outside of what only a screen shows; the load of a young body there", async () => {
  const html = renderToStaticMarkup(createElement(Review, { model: await loadReview(dot(), undefined) }));
  const [paper = "", screen = ""] = html.split(/<div class="[^"]*screen[^"]*">(?!.*<div)/s);
  expect(paper.match(/Pain stops every drill/g)).toHaveLength(1);
  expect(screen).toContain("A young body");
  expect(screen).not.toContain("Pain stops every drill");
});

it("tells the very figures of the season's page, and a start as known after two films", async () => {
  fillSeason(viewer, dot().student);
  const [page, season] = [await loadReview(dot(), undefined), await loadSeason(dot(), undefined)];
  const row = season.evidence.groups.flatMap(({ rows }) => rows)[0];
  const [name, start, now, place] = page.table?.table.rows[0]?.cells ?? [];
  expect([name, now]).toEqual([row?.name, row?.facts.find(({ name: fact }) => fact === "Level now")?.value]);
  expect(place).toBe(row?.facts.find(({ name: fact }) => fact === "Goal band")?.value);
  const [level, half] = (start ?? "").match(/\d+(\.\d+)?/g)?.map(Number) ?? [];
  // The first two films read 80.2 and 81.2 on average; the last 87.
  expect(Math.abs((level ?? 0) - 80.7)).toBeLessThan(1.5);
  expect(half).toBeGreaterThan(1);
  expect(page.proved.items.map(({ heading }) => heading)).toEqual(
    season.proved.items.filter(({ glyph }) => glyph !== "open").map(({ heading }) => heading),
  );
  expect(page.table?.table.download?.href).toContain("of=review");
});

it("says practice as asked and as logged, of a drill with days a week: 3 of 14 days at 7 a week", async () => {
  const { db, scope, today } = viewer;
  const day = (back: number): string => dayFromNumber(dayNumber(today) - back);
  insertDrill(db, scope, { id: "d1", name: "Wall", fundamentalId: "hinge", how: "", cautions: "" });
  const given = { id: "g1", drillId: "d1", fundamentalId: "hinge", start: day(13), end: null, dose: "20 slow" };
  insertAssignment(db, dot().student, given);
  db.sqlite.exec("UPDATE drill_assignment SET days_a_week = 7");
  const entry = { assignmentId: "g1", minutes: 10, balls: null, felt: null, source: "told", who: "Lark" } as const;
  insertPractice(
    db,
    dot().student,
    [1, 2, 3].map((back) => ({ id: `p${back}`, day: day(back), ...entry, recordedAt: `${today}T10:00:00.000Z` })),
  );
  const { practice } = await loadReview(dot(), undefined);
  expect(practice.heading).toBe("Practice on 3 days");
  expect(practice.lines.at(-1)).toMatch(/: 7 days a week; 20 slow; logged on 3 of 14 days asked for\.$/);
  // A week of injury asks for none, and neither does the rest before the film; the drill's own page has the same numbers.
  insertEvent(db, dot().student, {
    ...{ id: "e1", kind: "injury", place: "wrist", note: "", rebaselines: [] },
    ...{ day: day(13), endDay: day(7) },
  });
  db.orm.update(drillAssignment).set({ remeasureOn: today }).run();
  expect(practiceByDrill(dot()).get("g1")).toMatchObject({ practised: 3, stoppedDays: 7, restDays: 6, asked: 1 });
  const after = await loadReview(dot(), undefined);
  expect(after.practice.lines.at(-1)).toMatch(/: 7 days a week; 20 slow; logged on 3 of one day asked for\.$/);
});
