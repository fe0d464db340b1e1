import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { logFamilyPractice } from "@/app/_server/family/family-desk";
import { firstLogDay, loadStory } from "@/app/_server/family/load-story";
import type { FamilyViewer } from "@/app/_server/family-gate";
import type { StudentViewer } from "@/app/_server/gate";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { readFamilyPractice } from "@/db/read/family-practice";
import { readPractice } from "@/db/read/practice";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { FamilyStory } from "@/lib/report/family-story-model";
import { addShared, openedFamily, PUBLIC, stateAddress } from "./family-academy";
import { formOf } from "./first-student";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";
import { fillSeason } from "./reread-season";

let academy: PeopleAcademy;
let dot: StudentViewer;
let family: FamilyViewer;
const daysAgo = (days: number): string => dayFromNumber(dayNumber(dot.today) - days);

beforeAll(async () => {
  stateAddress(PUBLIC);
  academy = await startPeopleAcademy();
  dot = addShared(academy, "Dot", { birthYear: "2014" });
  fillSeason(dot, dot.student);
  insertDrill(dot.db, dot.scope, { id: "d1", name: "Wall", fundamentalId: "hinge", how: "By a wall.", cautions: "" });
  const given = { id: "g1", drillId: "d1", fundamentalId: "hinge", start: daysAgo(20), end: null, dose: "" };
  insertAssignment(dot.db, dot.student, { ...given, daysAWeek: 3, reps: 20, remeasureOn: daysAgo(-10) });
  ({ family } = await openedFamily(dot));
});
beforeEach(() => {
  dot.db.sqlite.exec("DELETE FROM practice");
});
afterAll(() => {
  academy.remove();
  stateAddress(null);
});

const log = (fields: Readonly<Record<string, string>>) =>
  logFamilyPractice(family, formOf({ day: dot.today, hurts: "no", key: randomUUID(), ...fields }));
/** As the family reads it, with what hurts; or as a message of somebody who may not know of that. */
async function told(reader: "family" | "without pain"): Promise<FamilyStory> {
  const first = firstLogDay(dot.today);
  const practice =
    reader === "family"
      ? readFamilyPractice(dot.db, family.pain, first)
      : readPractice(dot.db, dot.student)
          .filter(({ voidedAt, day }) => voidedAt === null && day >= first)
          .map((entry) => ({ ...entry, pain: null }));
  return loadStory(family, { verdicts: await loadStudentVerdicts(family), practice, openings: [] });
}

describe("a family's story from what is on file", () => {
  it("has the alias in its heading, and the drill in hand with its dose as the one task", async () => {
    const story = await told("family");
    expect(story.heading).toContain("Dot");
    expect(story.task).toMatch(
      /^Your one task until the next video: Wall\. 20 [^.]*3 days a week\. The next video is on [A-Z][a-z]{2} \d+ [A-Z][a-z]{2}\.$/,
    );
  });

  it("praises practice as it was asked, once as many days are written down, and no more than that", async () => {
    expect((await told("family")).alsoGood.join()).not.toContain("practised");
    // A family may write down today and yesterday; what was written down before is put there.
    log({ minutes: "10" });
    dot.db.sqlite.prepare("UPDATE practice SET day = ?").run(daysAgo(3));
    log({ day: daysAgo(1), minutes: "10" });
    expect((await told("family")).good).not.toContain("just as we asked");
    log({ balls: "20" });
    expect((await told("family")).good).toBe(
      "You practised on 3 of the last 7 days, just as we asked. Rest days are part of it.",
    );
  });

  it("stops where something hurts and thanks for the word, but tells nobody of pain who may not know of it", async () => {
    log({ hurts: "yes", place: "knee" });
    const family = await told("family");
    expect(family.heading).toBe("Dot: no practice for now");
    expect(family.good).toBe("You told us that something hurts. That was the right thing to do.");
    expect(family.task).toBe("Stop: no practice now. Tell a grown-up today.");
    const message = JSON.stringify(await told("without pain"));
    expect(message).not.toMatch(/hurt|knee|pain|Stop/);
  });
});
