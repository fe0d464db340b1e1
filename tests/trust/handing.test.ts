import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { handOver, takeHandingBack } from "@/app/_server/people/handing-desk";
import { handingState } from "@/app/_server/people/handing-state";
import { loadHanding } from "@/app/_server/people/load-handing";
import { readEventLog } from "@/db/read/events";
import { readStudentCharges } from "@/db/read/handing";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { addTo, form } from "../app/server/inviting";
import { countCases } from "./count-cases";
import { goTo, type HandingAcademy, seenBy, startHandingAcademy } from "./handing-academy";

// Promises 5, 7 and 9 where a student changes hands; D9 for the day on which they do.

const cases = countCases("handing over", 1000);

let academy: HandingAcademy;
beforeEach(async () => {
  academy = await startHandingAcademy();
});
afterEach(() => {
  vi.useRealTimers();
  academy.remove();
});

const whoSees = () => seenBy(academy, cases);

describe("handed over", () => {
  it("from today on: the other coach sees the student with the next request, the old one and who assists there don't", () => {
    expect(whoSees()).toEqual(["ada", "bo", "ed"]);
    expect(handOver(academy.as("bo"), form({ coach: "cy", note: "grip first" })).kind).toBe("handed");
    expect(whoSees()).toEqual(["ada", "cy"]);
    const [, charge] = readStudentCharges(academy.db, academy.as("cy").student);
    const newest = readStudentCharges(academy.db, academy.as("cy").student).at(-1);
    expect(charge).toBeDefined();
    expect(newest).toMatchObject({ coachId: "cy", fromCoachId: "bo", note: "grip first", untilDay: null, who: "Bo" });
  });

  it("from a later day on: everything stays until its eve, and turns at its midnight", () => {
    handOver(academy.as("bo"), form({ coach: "cy", from: academy.later(3) }));
    for (const day of [0, 1, 2]) {
      goTo(academy.later(day));
      expect(whoSees()).toEqual(["ada", "bo", "ed"]);
    }
    goTo(academy.later(3), "00:00:00Z");
    expect(whoSees()).toEqual(["ada", "cy"]);
  });

  it("planned, it can be taken back, by whose the student is and by a director; begun, it can't", () => {
    for (const who of ["bo", academy.ownerId]) {
      const made = handOver(academy.as("bo"), form({ coach: "cy", from: academy.later(2) }));
      const chargeId = made.kind === "handed" ? made.chargeId : "";
      expect(
        readEventLog(academy.db, academy.as("bo").student, null).find(({ id }) => id === chargeId)?.voidedAt,
      ).toBeNull();
      expect(takeHandingBack(academy.as(who), chargeId)).toBe("done");
      expect(takeHandingBack(academy.as(who), chargeId)).toBe("unchanged");
      expect(
        readEventLog(academy.db, academy.as("bo").student, null).find(({ id }) => id === chargeId)?.voidedAt,
      ).not.toBeNull();
      goTo(academy.later(5));
      expect(whoSees()).toEqual(["ada", "bo", "ed"]);
      vi.useRealTimers();
    }
    const made = handOver(academy.as("bo"), form({ coach: "cy" }));
    expect(takeHandingBack(academy.as("cy"), made.kind === "handed" ? made.chargeId : "")).toBe("unchanged");
    expect(whoSees()).toEqual(["ada", "cy"]);
    expect(handOver(academy.as("cy"), form({ coach: "bo" })).kind).toBe("handed");
    expect(whoSees()).toEqual(["ada", "bo", "ed"]);
  });

  it("a second hand-over is refused while one is planned, and nothing is written", () => {
    handOver(academy.as("bo"), form({ coach: "cy", from: academy.later(2) }));
    const before = readStudentCharges(academy.db, academy.as("bo").student);
    expect(handOver(academy.as("bo"), form({ coach: academy.ownerId, from: academy.later(4) })).kind).toBe("refused");
    expect(readStudentCharges(academy.db, academy.as("bo").student)).toEqual(before);
    cases.add(2);
  });

  it("dates the change of reader on that day, begins nothing anew, and is drawn by the new reader's name", () => {
    const made = handOver(academy.as("bo"), form({ coach: "cy", from: academy.later(1) }));
    const event = readEventLog(academy.db, academy.as("bo").student, null).find(
      ({ id }) => made.kind === "handed" && id === made.chargeId,
    );
    expect(event).toMatchObject({
      kind: "reader-change",
      day: academy.later(1),
      note: "Cy",
      rebaselines: [],
      who: "Bo",
    });
    cases.add();
  });

  it("several at once by a director, all or none", () => {
    const [tove, ulf] = [addTo(academy.ada, "Tove"), addTo(academy.ada, "Ulf")];
    giveStudents(academy.ada, form({ students: [tove, ulf], coach: "bo" }));
    handOver(academy.as("bo"), form({ coach: "cy", from: academy.later(9) }));
    const all = { students: [academy.nia, tove, ulf], coach: "cy" };
    expect(giveStudents(academy.ada, form(all)).kind).toBe("refused");
    expect(academy.viewer("cy").scope.students).toEqual([]);
    expect(giveStudents(academy.ada, form({ ...all, students: [tove, ulf], note: "both putt left" }))).toEqual({
      kind: "given",
      students: 2,
    });
    expect(academy.viewer("cy").scope.students).toEqual([tove, ulf].toSorted());
    expect(academy.viewer("bo").scope.students).toEqual([academy.nia]);
    cases.add(4);
  });
});

describe("covered", () => {
  it("the other coach sees the student on those days and no other; the own coach always; it ends by itself", () => {
    handOver(academy.as("bo"), form({ kind: "cover", coach: "cy", from: academy.later(1), until: academy.later(2) }));
    const seen = [0, 1, 2, 3].map((day) => {
      goTo(academy.later(day));
      return whoSees().join(" ");
    });
    expect(seen).toEqual(["ada bo ed", "ada bo cy ed", "ada bo cy ed", "ada bo ed"]);
  });

  it("whoever covers may neither hand over, nor have covered, nor end the cover; ended by the coach, it is over at once", () => {
    const made = handOver(academy.as("bo"), form({ kind: "cover", coach: "cy", until: academy.later(9) }));
    const chargeId = made.kind === "handed" ? made.chargeId : "";
    expect(handOver(academy.as("cy"), form({ coach: academy.ownerId })).kind).toBe("not-yours");
    expect(
      handOver(academy.as("cy"), form({ kind: "cover", coach: academy.ownerId, until: academy.later(3) })).kind,
    ).toBe("not-yours");
    expect(takeHandingBack(academy.as("cy"), chargeId)).toBe("unchanged");
    expect(JSON.stringify(loadHanding(academy.as("cy"), randomUUID(), {}))).not.toContain('"act":"hand"');
    expect(whoSees()).toEqual(["ada", "bo", "cy", "ed"]);
    expect(handOver(academy.as("bo"), form({ kind: "cover", coach: "cy", until: academy.later(3) })).kind).toBe(
      "refused",
    );
    expect(takeHandingBack(academy.as("bo"), chargeId)).toBe("done");
    expect(whoSees()).toEqual(["ada", "bo", "ed"]);
    expect(readEventLog(academy.db, academy.as("bo").student, null).find(({ id }) => id === chargeId)?.endDay).toBe(
      academy.ada.today,
    );
    cases.add(6);
  });

  it("a coach without the student can do nothing of it, and a stranger's charge is nobody's", () => {
    expect(academy.reach("cy")).toBeNull();
    const tove = addTo(academy.ada, "Tove");
    const made = giveStudents(academy.ada, form({ students: [tove], coach: "cy", from: academy.later(1) }));
    expect(made.kind).toBe("given");
    const [foreign] = academy.db.sqlite
      .prepare<[string, string], string>("SELECT id FROM charge WHERE student_id = ? AND from_day = ?")
      .pluck()
      .all(tove, academy.later(1));
    expect(takeHandingBack(academy.as("bo"), foreign ?? "")).toBe("unchanged");
    cases.add(2);
  });
});

describe("the same press", () => {
  it("sent twice makes one charge; a refused form comes back as typed", () => {
    const draft = randomUUID();
    const fields = { draft, coach: "cy", from: academy.later(1), studentId: academy.nia };
    const [one, two] = [handOver(academy.as("bo"), form(fields)), handOver(academy.as("bo"), form(fields))];
    expect(two).toEqual(one);
    expect(handingState(academy.as("bo")).planned?.coachId).toBe("cy");
    const refused = handOver(academy.as("bo"), form({ draft: randomUUID(), coach: "nobody", note: "kept as typed" }));
    const page = refused.kind === "refused" ? JSON.stringify(loadHanding(academy.as("bo"), refused.draftId, {})) : "";
    expect(page).toContain("kept as typed");
    cases.add(3);
  });
});

describe("D9: a cover of one day", () => {
  const ZONES = ["UTC", "Europe/Berlin", "America/St_Johns", "Pacific/Kiritimati", "Australia/Lord_Howe"];
  it.each(ZONES)("begins and ends with the academy's day in %s, whatever the machine's zone", (zone) => {
    academy.db.sqlite.prepare("UPDATE academy SET zone = ?").run(zone);
    const local = (instant: number) =>
      new Intl.DateTimeFormat("sv-SE", { timeZone: zone, dateStyle: "short" }).format(instant);
    // Around turns of daylight saving in 2027, a night of 23 hours and one of 24.5, every half hour of the days about it.
    for (const day of ["2027-03-28", "2027-04-04"]) {
      vi.useFakeTimers({ toFake: ["Date"], now: Date.parse(`${dayFromNumber(dayNumber(day) - 3)}T12:00:00Z`) });
      const made = handOver(academy.as("bo"), form({ kind: "cover", coach: "cy", from: day, until: day }));
      expect(made.kind).toBe("handed");
      const start = Date.parse(`${day}T00:00:00Z`) - 16 * 3_600_000;
      for (let at = start; at < start + 56 * 3_600_000; at += 1_800_000) {
        vi.setSystemTime(at);
        expect([at, academy.reach("cy") !== null]).toEqual([at, local(at) === day]);
        cases.add();
      }
      vi.setSystemTime(start);
      takeHandingBack(academy.as("bo"), made.kind === "handed" ? made.chargeId : "");
    }
  });
});
