import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { logFamilyPractice, takeFamilyPractice } from "@/app/_server/family/family-desk";
import { loadFamily } from "@/app/_server/family/load-family";
import { receiveFamily } from "@/app/_server/family/receive-family";
import type { FamilyViewer } from "@/app/_server/family-gate";
import type { StudentViewer } from "@/app/_server/gate";
import { readFamilyPractice } from "@/db/read/family-practice";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { addShared, openedFamily, PUBLIC, stateAddress } from "./family-academy";
import { formOf } from "./first-student";
import { type PeopleAcademy, sentTo, startPeopleAcademy } from "./people-academy";

let academy: PeopleAcademy;
let dot: StudentViewer;
let family: FamilyViewer;
let cookie: string;
const daysAgo = (days: number): string => dayFromNumber(dayNumber(dot.today) - days);
beforeAll(async () => {
  stateAddress(PUBLIC);
  academy = await startPeopleAcademy();
  dot = addShared(academy, "Dot", { birthYear: "2014" });
  insertDrill(dot.db, dot.scope, { id: "d1", name: "Wall", fundamentalId: "hinge", how: "Stand.", cautions: "" });
  const given = { id: "g1", drillId: "d1", fundamentalId: "hinge", start: daysAgo(3), end: null };
  insertAssignment(dot.db, dot.student, { ...given, dose: "20 minutes a day", daysAWeek: 4 });
  ({ family, cookie } = await openedFamily(dot));
});
beforeEach(() => {
  dot.db.sqlite.exec("DELETE FROM practice");
});
afterAll(() => {
  academy.remove();
  stateAddress(null);
});

const kept = (fields: Readonly<Record<string, string>>) =>
  takeFamilyPractice(family, formOf({ hurts: "no", kept: "yes", key: randomUUID(), minutes: "10", ...fields }));
const rows = () =>
  readFamilyPractice(dot.db, family.pain, daysAgo(40)).map(({ day, minutes, assignmentId }) => ({
    ...{ day, minutes, assignmentId },
  }));

describe("practice that a phone kept without signal", () => {
  it("is written on the day it was made for, with the drill of that day, as long as the page shows that day", () => {
    expect(kept({ day: daysAgo(3) })).toEqual({ outcome: "logged", why: "" });
    expect(kept({ day: daysAgo(6) })).toEqual({ outcome: "logged", why: "" });
    expect(rows()).toEqual([
      { day: daysAgo(6), minutes: 10, assignmentId: null },
      { day: daysAgo(3), minutes: 10, assignmentId: "g1" },
    ]);
  });

  it("of a day that is too long ago, has not come, or is none is refused with the reason, and nothing is written", () => {
    const past = { outcome: "refused", why: "That was more than 7 days ago. Please tell your coach." };
    const future = { outcome: "refused", why: "That day has not come yet where you are. Please tell your coach." };
    expect(kept({ day: daysAgo(7) })).toEqual(past);
    expect(kept({ day: "1970-01-01" })).toEqual(past);
    for (const day of [daysAgo(-1), "2099-01-01", "", "2026-02-30", "yesterday"])
      expect([day, kept({ day })]).toEqual([day, future]);
    expect(rows()).toEqual([]);
  });

  it("is written once, however often and from however many tabs it is sent, also where only the answer was lost", () => {
    const sent = { key: randomUUID(), day: dot.today, minutes: "10", balls: "", felt: "" };
    const live = { ...sent, hurts: "no", place: "", tap: "yes" };
    expect(logFamilyPractice(family, formOf(live))).toBe("logged");
    for (let times = 0; times < 3; times++) expect(kept(sent)).toEqual({ outcome: "logged", why: "" });
    expect(rows()).toHaveLength(1);
  });

  it("that is absurd is refused with the reason and stays with the phone; the page is not asked to show it", async () => {
    for (const [fields, why] of [
      [{ minutes: "301" }, /^That is more than 5 hours in one day\./],
      [{ minutes: "", balls: "1001" }, /^That is more than 1000 balls/],
      [{ minutes: "0" }, /^Leave it empty/],
      [{ minutes: "-5" }, /^Please write a whole number/],
      [{ minutes: "", balls: "" }, /^How many minutes/],
      [{ felt: "<b>" }, /^Please choose one of these/],
    ] as const)
      expect(kept({ day: dot.today, ...fields })).toEqual({ outcome: "refused", why: expect.stringMatching(why) });
    expect(rows()).toEqual([]);
    expect((await loadFamily(family, "refused")).practice.form.refusal).toBe("");
    // A day's sum counts what stands, however it came.
    expect([kept({ day: daysAgo(5), minutes: "200" }), kept({ day: daysAgo(5), minutes: "101" })]).toEqual([
      { outcome: "logged", why: "" },
      { outcome: "refused", why: expect.stringContaining("5 hours") },
    ]);
  });

  it("without an answer about pain is none: it is refused", () => {
    expect(kept({ day: dot.today, hurts: "" })).toEqual({ outcome: "refused", why: expect.stringContaining("hurts") });
    expect(rows()).toEqual([]);
  });
});

describe("what a press of the page's script is answered", () => {
  const send = (fields: Readonly<Record<string, string>>, headers: Readonly<Record<string, string>> = {}) =>
    receiveFamily(
      "POST /api/family/[pageId]/practice",
      new Request(`http://127.0.0.1:3000/api/family/${family.link.id}/practice`, {
        method: "POST",
        headers: sentTo({ cookie, accept: "application/json", ...headers }),
        body: new URLSearchParams(fields),
      }),
      family.link.id,
      takeFamilyPractice,
    );

  it("is what came of it and where the page says so; without scripts the same press is led there", async () => {
    const fields = { day: dot.today, minutes: "5", hurts: "no", key: randomUUID() };
    const answer = await send(fields);
    const to = `/family/${family.link.id}?done=logged`;
    expect([answer.status, await answer.json()]).toEqual([200, { outcome: "logged", why: "", to }]);
    const plain = await send(fields, { accept: "text/html" });
    expect([plain.status, plain.headers.get("location")]).toEqual([303, to]);
    expect(rows()).toHaveLength(1);
    const late = await send({ ...fields, day: daysAgo(9), kept: "yes" });
    expect(await late.json()).toMatchObject({ outcome: "refused", why: expect.stringContaining("7 days ago") });
  });

  it("is the one page of 404 where the link opens nothing, in whatever form it asks", async () => {
    for (const accept of ["application/json", "text/html"]) {
      const answer = await send({ day: dot.today, minutes: "5", hurts: "no" }, { cookie: "", accept });
      expect([answer.status, await answer.text()]).toEqual([404, expect.stringContaining("We can’t show a page")]);
    }
  });
});

describe("a tap", () => {
  const tap = (fields: Readonly<Record<string, string>>) =>
    logFamilyPractice(family, formOf({ day: dot.today, tap: "yes", minutes: "10", ...fields }));

  it("needs only the answer about pain, and offers the minutes of the drill's dose", async () => {
    expect(tap({ hurts: "no" })).toBe("logged");
    const { practice } = await loadFamily(family, "logged");
    expect(practice.tap?.buttons.map(({ said }) => said)).toEqual(["10 min", "20 min", "30 min"]);
    expect(practice.heading).toBe("Practice in the last 7 days: 1 of 4 days");
    expect(practice.week.at(-1)).toMatchObject({ said: "10", unit: "min", when: "today" });
  });

  it("without it, or with a day that has passed, is refused where the buttons are, and the exact form stays shut", async () => {
    for (const [fields, why] of [
      [{}, "Please say whether something hurts: yes or no."],
      [{ hurts: "no", day: daysAgo(2) }, "A new day has begun since this page was opened. Please tap once more."],
    ] as const) {
      expect(tap(fields)).toBe("refused");
      const { practice } = await loadFamily(family, "refused");
      expect([practice.tap?.refusal, practice.form.refusal, practice.form.open]).toEqual([why, "", "shut"]);
    }
    expect(rows()).toEqual([]);
  });

  it("twice by the same finger is one, and a yes to pain takes the buttons away", async () => {
    const key = randomUUID();
    expect([tap({ hurts: "no", key }), tap({ hurts: "no", key })]).toEqual(["logged", "logged"]);
    expect(rows()).toHaveLength(1);
    expect(tap({ hurts: "yes", minutes: "", place: "knee" })).toBe("hurts");
    const { practice, stop } = await loadFamily(family, "hurts");
    expect([practice.tap, practice.form.open, stop?.lines[0]]).toEqual([null, "open", expect.stringContaining("knee")]);
  });
});
