import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { keepDraft } from "@/app/_server/draft/keep-draft";
import { loadUnfinished } from "@/app/_server/draft/unfinished";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { handOver } from "@/app/_server/people/handing-desk";
import { form } from "../app/server/inviting";
import { countCases } from "./count-cases";
import { goTo, type HandingAcademy, startHandingAcademy } from "./handing-academy";

// Promises 5 and 14 where a student changes hands: what is typed and not saved yet.

const cases = countCases("unfinished forms of a student who changes hands", 15);

let academy: HandingAcademy;
beforeEach(async () => {
  academy = await startHandingAcademy();
});
afterEach(() => {
  vi.useRealTimers();
  academy.remove();
});

const draftIds = (userId: string): readonly string[] => loadUnfinished(academy.viewer(userId)).map(({ id }) => id);

describe("unfinished forms", () => {
  it("go to the other coach whole, with both versions of two windows; nobody's own ones are touched", () => {
    const draft = academy.typeInto("bo");
    const again = {
      draft,
      form: "event-form",
      studentId: academy.nia,
      version: 0,
      writer: "phone",
      turn: 1,
      settles: "",
    };
    expect(keepDraft(academy.as("bo"), { ...again, entries: [["note", "hands high"]] }).kind).toBe("changed");
    const body = () => academy.db.sqlite.prepare("SELECT body FROM draft WHERE id = ?").pluck().get(draft);
    const before = body();
    expect(String(before)).toMatch(/hands low.*hands high/);
    const helps = academy.typeInto("ed");
    handOver(academy.as("bo"), form({ draft: randomUUID(), coach: "cy" }));
    expect(body()).toBe(before);
    expect(draftIds("cy").toSorted()).toEqual([draft, helps].toSorted());
    expect([draftIds("bo"), draftIds("ed")]).toEqual([[], []]);
    cases.add(5);
  });

  it("go at the midnight of a planned day, and not before; the director who handed over keeps what was typed since", () => {
    handOver(academy.as("bo"), form({ coach: academy.ownerId }));
    handOver(academy.as(academy.ownerId), form({ coach: "cy", from: academy.later(2) }));
    const before = academy.typeInto(academy.ownerId);
    expect(draftIds(academy.ownerId)).toEqual([before]);
    goTo(academy.later(2));
    const since = academy.typeInto(academy.ownerId);
    expect(draftIds("cy")).toEqual([before]);
    expect(draftIds(academy.ownerId)).toEqual([since]);
    cases.add(3);
  });

  it("of a cover stay with whoever types them, and come to the student's own coach when it ends", () => {
    const mine = academy.typeInto("bo");
    handOver(academy.as("bo"), form({ kind: "cover", coach: "cy", until: academy.later(1) }));
    const theirs = academy.typeInto("cy");
    expect([draftIds("bo"), draftIds("cy")]).toEqual([[mine], [theirs]]);
    goTo(academy.later(2));
    expect(draftIds("bo").toSorted()).toEqual([mine, theirs].toSorted());
    expect(draftIds("cy")).toEqual([]);
    cases.add(4);
  });

  it("of somebody who has left come to whoever gets the student", () => {
    const draft = academy.typeInto("bo");
    academy.db.sqlite
      .prepare("UPDATE person SET ended_at = ?, ended_by = 'x' WHERE user_id = 'bo'")
      .run(academy.ada.today);
    giveStudents(academy.ada, form({ students: [academy.nia], coach: "cy" }));
    expect(draftIds("cy")).toEqual([draft]);
    cases.add();
  });

  it("a window that is still open on one that went keeps nothing over it", () => {
    handOver(academy.as("bo"), form({ coach: academy.ownerId }));
    const draft = academy.typeInto(academy.ownerId, "mine");
    handOver(academy.as(academy.ownerId), form({ coach: "cy" }));
    const open = {
      draft,
      form: "event-form",
      studentId: academy.nia,
      version: 1,
      writer: academy.ownerId,
      turn: 2,
      settles: "",
    };
    expect(keepDraft(academy.as(academy.ownerId), { ...open, entries: [["note", "over it"]] }).kind).toBe("absent");
    expect(academy.db.sqlite.prepare("SELECT body FROM draft WHERE id = ?").pluck().get(draft)).toContain("mine");
    cases.add(2);
  });
});

describe("a hand-over that fails midway", () => {
  it("changes nothing: not the charges, not the forms, not the record", () => {
    const draft = academy.typeInto("bo");
    const { sqlite } = academy.db;
    const all = () =>
      ["charge", "draft", "event", "student"].map((table) =>
        sqlite.prepare(`SELECT * FROM ${table} ORDER BY id`).all(),
      );
    const before = all();
    for (const [table, act] of [
      ["event", "INSERT"],
      ["draft", "UPDATE"],
      ["charge", "UPDATE"],
      ["charge", "INSERT"],
    ] as const) {
      sqlite.exec(`CREATE TRIGGER stop BEFORE ${act} ON ${table} BEGIN SELECT RAISE(ABORT, 'stopped'); END`);
      expect(() => handOver(academy.as("bo"), form({ coach: "cy" }))).toThrow("stopped");
      sqlite.exec("DROP TRIGGER stop");
      expect([table, act, all()]).toEqual([table, act, before]);
      cases.add();
    }
    expect(handOver(academy.as("bo"), form({ coach: "cy" })).kind).toBe("handed");
    expect(draftIds("cy")).toEqual([draft]);
  });
});
