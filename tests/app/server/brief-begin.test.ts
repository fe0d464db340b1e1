import { afterAll, beforeAll, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { loadSeasonPage } from "@/app/_server/season/load-season";
import { addStudent } from "@/app/_server/season/student-desk";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { enterFilm } from "./reread-season";

let viewer: Viewer;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const who = { hand: "left", birthYear: String(Number(viewer.today.slice(0, 4)) - 12), clubs: "", zone: "UTC" };
  await addStudent(viewer, formOf({ alias: "Dot", ...who, consentGivenBy: "a parent", consentOnPaper: "yes" }));
});
afterAll(() => remove());

it("one day with driver and iron is one film, in the brief as on the season's page", async () => {
  const said = async () => {
    const { brief } = await loadRoster(viewer, { sort: undefined, page: undefined });
    const { firstWeek } = await loadSeasonPage(firstStudent(viewer), undefined);
    return [brief?.next?.heading, firstWeek?.heading];
  };
  expect(await said()).toEqual([
    "Ask Dot for two films before the first drill",
    "Two films on two days, before the first drill",
  ]);
  for (const [at, id] of ["driver", "iron"].entries()) {
    const now = new Date(Date.now() + at * 1000).toISOString();
    const film = { id, day: viewer.today, reference: null, now };
    enterFilm(viewer, firstStudent(viewer).student, film, [88, 89, 90]);
    viewer.db.sqlite.exec("UPDATE session SET club_group = 'driver', said_club_group = 'driver' WHERE id = 'driver'");
  }
  expect(await said()).toEqual([
    "Ask Dot for a second film before the first drill",
    "One film more, on another day, before the first drill",
  ]);
});
