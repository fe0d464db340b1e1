import { afterAll, beforeAll, beforeEach, expect, it } from "vitest";
import { loadFamily } from "@/app/_server/family/load-family";
import type { FamilyViewer } from "@/app/_server/family-gate";
import type { StudentViewer } from "@/app/_server/gate";
import { insertFilmPlan, updateFilmPlanVoided } from "@/db/write/film-plans";
import { sayDay } from "@/lib/words/day-words";
import { addShared, openedFamily, PUBLIC, stateAddress } from "./family-academy";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";
import { fillSeason, filmDays, SESSIONS } from "./reread-season";

let academy: PeopleAcademy;
let dot: StudentViewer;
let family: FamilyViewer;
beforeAll(async () => {
  stateAddress(PUBLIC);
  academy = await startPeopleAcademy();
  dot = addShared(academy, "Dot");
  ({ family } = await openedFamily(dot));
});
beforeEach(() => {
  dot.db.sqlite.exec("DELETE FROM film_plan");
});
afterAll(() => {
  academy.remove();
  stateAddress(null);
});

it("with nothing on file has no picture, and still how the first video is made", async () => {
  const { look, seen, told } = await loadFamily(family, undefined);
  expect([look.picture, look.strips, look.milestones, look.numbers, seen, told]).toEqual([
    null,
    null,
    null,
    null,
    "",
    [],
  ]);
  expect(look.filming.heading).toBe("Next video: from the front");
  expect(look.filming.tip).toBe("");
});

it("shows how to film what the family was told of, also before the first video, until it was taken back", async () => {
  const stamp = { who: "Ada", recordedAt: "2026-01-01T10:00:00.000Z", madeOn: "2026-01-01" };
  const body = { fundamentals: [{ id: "foot-line", swings: 5 }], views: ["down-the-line" as const], care: [] };
  insertFilmPlan(dot.db, dot.student, { ...{ id: "told", clubGroup: "iron", dueOn: family.today, body }, ...stamp });
  const { heading, swings, cards } = (await loadFamily(family, undefined)).look.filming;
  expect(heading).toMatch(/^Next video, by .*: from behind$/);
  expect([swings, cards.length]).toEqual(["5 swings, then stop.", 1]);
  updateFilmPlanVoided(dot.db, dot.student, { planId: "told", voidedAt: "2026-01-02T10:00:00.000Z" });
  expect((await loadFamily(family, undefined)).look.filming.heading).toBe("Next video: from the front");
});

it("with videos draws what is in hand, names the last day, and judges them as the coach's pages do", async () => {
  fillSeason(dot, dot.student);
  const { look, seen } = await loadFamily(family, undefined);
  expect(seen).toBe(`Last video: ${sayDay(family.words, filmDays(dot).at(-1) ?? "", "with-weekday")}`);
  expect(look.picture?.heading).toBe("How your wrists bend");
  expect(look.picture?.sessions).toHaveLength(SESSIONS);
  expect(look.numbers?.items).toHaveLength(1);
  expect(look.numbers?.videos?.lines).toHaveLength(SESSIONS);
  expect(look.filming.heading).toBe("Next video: from the front");
  // Nobody looked where the phone stood: that is the one tip.
  expect(look.filming.tip).toMatch(
    /^Your last eight videos were all good to use\. One tip: next time, lay the two sticks/,
  );
});
