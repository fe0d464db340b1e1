import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { handOver } from "@/app/_server/people/handing-desk";
import { changeRoles, endAccess } from "@/app/_server/people/people-desk";
import { readEventLog } from "@/db/read/events";
import { readStudentCharges } from "@/db/read/handing";
import { goTo, type HandingAcademy, startHandingAcademy } from "../../trust/handing-academy";
import { form } from "./inviting";

// Somebody leaves to whom a student was to go later.

let academy: HandingAcademy;
beforeEach(async () => {
  academy = await startHandingAcademy();
});
afterEach(() => {
  vi.useRealTimers();
  academy.remove();
});

describe("who was to get a student, and leaves or coaches no more", () => {
  it.each([
    ["ended", () => endAccess(academy.ada, "cy")],
    ["given another role", () => changeRoles(academy.ada, "cy", form({ roles: ["assistant"], assists: ["bo"] }))],
    [
      "ended by an owner who sees no student",
      () => endAccess({ ...academy.ada, roles: ["owner"], scope: { ...academy.ada.scope, students: [] } }, "cy"),
    ],
  ])("%s: what was planned is taken back, and the student stays with their coach", (_how, leave) => {
    const { student } = academy.as("bo");
    const cover = handOver(
      academy.as("bo"),
      form({ kind: "cover", coach: "cy", from: academy.later(1), until: academy.later(2) }),
    );
    const planned = handOver(academy.as("bo"), form({ coach: "cy", from: academy.later(3) }));
    const ids = [cover, planned].map((made) => (made.kind === "handed" ? made.chargeId : ""));
    expect(leave()).toEqual({ kind: "done" });
    const charges = readStudentCharges(academy.db, student);
    expect(charges.find(({ coachId }) => coachId === "bo")).toMatchObject({ untilDay: null, endedAt: null });
    expect(charges.filter(({ id, endedAt }) => ids.includes(id) && endedAt !== null)).toHaveLength(2);
    const events = readEventLog(academy.db, student, null).filter(({ id }) => ids.includes(id));
    expect(events.map(({ voidedAt }) => voidedAt === null)).toEqual([false, false]);
    expect(academy.reach("bo")).not.toBeNull();
  });
});

describe("what a coach has or had in charge, and leaves", () => {
  const cover = (from: number, until: number): string => {
    const made = handOver(
      academy.as("bo"),
      form({ kind: "cover", coach: "cy", from: academy.later(from), until: academy.later(until) }),
    );
    if (made.kind !== "handed") throw new Error(made.kind);
    return made.chargeId;
  };

  it("ends a cover that runs with its change of reader: the other reads no more after today", () => {
    const { student } = academy.as("bo");
    const id = cover(0, 7);
    expect(endAccess(academy.ada, "cy")).toEqual({ kind: "done" });
    const charge = readStudentCharges(academy.db, student).find((each) => each.id === id);
    expect(charge).toMatchObject({ endedBy: academy.ada.name, untilDay: academy.later(7) });
    const event = readEventLog(academy.db, student, null).find((each) => each.id === id);
    expect(event).toMatchObject({ day: academy.later(0), endDay: academy.later(0), voidedAt: null });
  });

  it("a cover that had run out ended then, by nobody's hand", () => {
    const { student } = academy.as("bo");
    const id = cover(0, 1);
    const left = readStudentCharges(academy.db, student).find((each) => each.id === id);
    goTo(academy.later(5));
    const ada = academy.viewer(academy.ownerId);
    expect(endAccess(ada, "cy")).toEqual({ kind: "done" });
    const now = readStudentCharges(academy.db, student).find((each) => each.id === id);
    expect(now).toMatchObject({ untilDay: left?.untilDay, endedAt: null, endedBy: null });
    const event = readEventLog(academy.db, student, null).find((each) => each.id === id);
    expect(event?.endDay).toBe(left?.untilDay);
  });
});
