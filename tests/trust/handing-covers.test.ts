import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { handOver, takeHandingBack } from "@/app/_server/people/handing-desk";
import { pageAfterHanding } from "@/app/_server/people/load-handing";
import { readEventLog } from "@/db/read/events";
import { readStudentCharges } from "@/db/read/handing";
import { form } from "../app/server/inviting";
import { countCases } from "./count-cases";
import { goTo, type HandingAcademy, seenBy, startHandingAcademy } from "./handing-academy";

// Promise 5 where somebody who covers a student is given the student: nobody keeps a way in of before.

const cases = countCases("covers of who is given the student", 20);

let academy: HandingAcademy;
beforeEach(async () => {
  academy = await startHandingAcademy();
});
afterEach(() => {
  vi.useRealTimers();
  academy.remove();
});

const whoSees = () => seenBy(academy, cases);

describe("a cover of somebody who is given the student", () => {
  const charge = (id: string) =>
    readStudentCharges(academy.db, academy.as(academy.ownerId).student).find((each) => each.id === id);
  const event = (id: string) =>
    readEventLog(academy.db, academy.as(academy.ownerId).student, null).find((each) => each.id === id);
  const cover = (coach: string, from: number, until: number): string => {
    const sent = form({ kind: "cover", coach, from: academy.later(from), until: academy.later(until) });
    const made = handOver(academy.as(academy.ownerId), sent);
    return made.kind === "handed" ? made.chargeId : "";
  };

  it("ends with the day before: handed on later, the student is theirs no more, by no form", () => {
    for (const give of [
      (coach: string) => handOver(academy.as(academy.ownerId), form({ coach })),
      (coach: string) => giveStudents(academy.ada, form({ students: [academy.nia], coach })),
    ]) {
      const [runs, coming] = [cover("cy", 0, 30), cover("cy", 40, 50)];
      expect(give("cy")).not.toMatchObject({ kind: "refused" });
      expect(charge(runs)?.untilDay).toBe(academy.later(-1));
      expect([event(runs)?.voidedAt, event(coming)?.voidedAt]).not.toContain(null);
      expect(give("bo")).not.toMatchObject({ kind: "refused" });
      expect(whoSees()).toEqual(["ada", "bo", "ed"]);
      goTo(academy.later(45));
      expect(whoSees()).toEqual(["ada", "bo", "ed"]);
      vi.useRealTimers();
    }
    // A cover from before this was minded ends with the own charge.
    const old = cover("cy", 0, 30);
    handOver(academy.as("bo"), form({ coach: "cy" }));
    academy.db.sqlite.prepare("UPDATE charge SET until_day = ? WHERE id = ?").run(academy.later(30), old);
    const sent = handOver(academy.as("cy"), form({ coach: "bo" }));
    expect(sent.kind).toBe("handed");
    expect(whoSees()).toEqual(["ada", "bo", "ed"]);
    cases.add(6);
  });

  it("one that has run for days keeps the days that it had", () => {
    const runs = cover("cy", 0, 30);
    goTo(academy.later(3));
    handOver(academy.as("bo"), form({ coach: "cy" }));
    expect([charge(runs)?.untilDay, event(runs)?.endDay]).toEqual([academy.later(2), academy.later(2)]);
    expect(event(runs)?.voidedAt).toBeNull();
    goTo(academy.later(5));
    const draft = academy.typeInto("cy");
    expect(pageAfterHanding(academy.as("cy"))).toContain(academy.nia);
    const was = academy.as("cy");
    handOver(was, form({ coach: "bo" }));
    expect(pageAfterHanding(was)).toBe("/students?done=handed");
    expect(whoSees()).toEqual(["ada", "bo", "ed"]);
    expect(academy.db.sqlite.prepare("SELECT user_id FROM draft WHERE id = ?").pluck().get(draft)).toBe("bo");
    cases.add(2);
  });

  it("planned, it ends with the eve, and is restored with its event when that is taken back; a third's stays", () => {
    const [runs, coming] = [cover("cy", 0, 30), cover("cy", 40, 50)];
    const third = cover(academy.ownerId, 0, 30);
    const before = [runs, coming, third].map((id) => [charge(id)?.untilDay, event(id)?.endDay, event(id)?.voidedAt]);
    const made = handOver(academy.as("bo"), form({ coach: "cy", from: academy.later(5) }));
    expect(charge(runs)?.untilDay).toBe(academy.later(4));
    expect(charge(coming)?.untilDay).toBe(academy.later(4));
    expect(charge(third)?.untilDay).toBe(academy.later(30));
    expect(event(coming)?.voidedAt).not.toBeNull();
    expect(takeHandingBack(academy.as("bo"), made.kind === "handed" ? made.chargeId : "")).toBe("done");
    expect([runs, coming, third].map((id) => [charge(id)?.untilDay, event(id)?.endDay, event(id)?.voidedAt])).toEqual(
      before,
    );
    expect(charge(runs)?.untilDay).toBe(academy.later(30));
    cases.add(3);
  });
});
