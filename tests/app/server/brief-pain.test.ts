import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { loadDue } from "@/app/_server/plan/load-due";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { markDealtWith } from "@/app/_server/roster/mark-seen";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { addTo, form } from "./inviting";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";

/*
 * TRUST.md, promise 8, on the roster: that something hurts is told to the coach in charge; a director, an assistant and a coach
 * of others read nothing of it, nor that there is a list.
 */

let academy: PeopleAcademy;
let student: string;

beforeAll(async () => {
  academy = await startPeopleAcademy();
  const ada = academy.viewer(academy.ownerId);
  student = addTo(ada, "Nia");
  await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
  await academy.add({ userId: "cy", name: "Cy", roles: ["coach"] });
  await academy.add({ userId: "di", name: "Di", roles: ["director"] });
  await academy.add({ userId: "ed", name: "Ed", roles: ["assistant"], assists: ["bo"] });
  giveStudents(ada, form({ students: [student], coach: "bo" }));
  academy.db.sqlite
    .prepare(
      `INSERT INTO practice (id, student_id, day, pain, source, who, recorded_at)
       VALUES ('h1', ?, ?, 'ankle', 'family', 'the family', ?)`,
    )
    .run(student, ada.today, new Date().toISOString());
});
afterAll(() => academy.remove());

const briefOf = async (userId: string) =>
  (await loadRoster(academy.viewer(userId), { sort: undefined, page: undefined })).brief;

describe("pain on the roster", () => {
  it("comes before everything for the coach in charge, with the day and the place", async () => {
    const brief = await briefOf("bo");
    expect(brief?.next?.heading).toBe("Speak with Nia first: it hurts");
    expect(brief?.lists[0]).toMatchObject({ word: "pain", heading: "One student said that it hurts" });
    expect(brief?.lists[0]?.items[0]?.text).toMatch(/: ankle\.$/);
  });

  it("is nothing at all to a director, an assistant and another coach", async () => {
    for (const userId of [academy.ownerId, "cy", "di", "ed"]) {
      const brief = await briefOf(userId);
      expect(JSON.stringify(brief)).not.toMatch(/ankle|hurts:|"word":"pain"|it hurts/);
    }
  });

  it("asks whoever may know it for no film, dealt with or not; a director, who may not, sees the promise", async () => {
    const ada = academy.viewer(academy.ownerId);
    const [made, due] = [10, 3].map((before) => dayFromNumber(dayNumber(ada.today) - before));
    academy.db.sqlite
      .prepare(
        `INSERT INTO film_plan (id, student_id, club_group, made_on, due_on, body, who, recorded_at)
         VALUES ('p1', ?, 'iron', ?, ?, '{"fundamentals":[{"id":"hinge","swings":4}],"views":["face-on"],"care":[]}', 'Bo', ?)`,
      )
      .run(student, made, due, `${made}T10:00:00.000Z`);
    expect(["bo", "cy", "di"].map((userId) => loadDue(academy.viewer(userId)).films.length)).toEqual([0, 0, 1]);
    const pain = (await briefOf("bo"))?.next?.putAway.key ?? "";
    await markDealtWith(academy.viewer("bo"), form({ put: pain }));
    const brief = await briefOf("bo");
    expect([brief?.next, brief?.lists]).toEqual([null, []]);
    expect((await briefOf("di"))?.lists.map(({ word }) => word)).toEqual(["begin", "due"]);
    academy.db.sqlite.exec(`UPDATE practice SET voided_at = '${made}T10:00:00.000Z' WHERE id = 'h1'`);
    expect(loadDue(academy.viewer("bo")).films).toHaveLength(1);
    expect((await briefOf("bo"))?.lists.map(({ word }) => word)).toEqual(["begin", "due"]);
  });
});
