import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { logFamilyPractice, takeFamilyPracticeBack } from "@/app/_server/family/family-desk";
import { loadFamily } from "@/app/_server/family/load-family";
import type { FamilyViewer } from "@/app/_server/family-gate";
import type { StudentViewer } from "@/app/_server/gate";
import { loadPractice } from "@/app/_server/season/practice-desk";
import { readFamilyPractice } from "@/db/read/family-practice";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { insertPractice } from "@/db/write/practice";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
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
  const drill = { id: "d1", name: "Wall", fundamentalId: "hinge", how: "Stand by a wall.", cautions: "Mind the wall." };
  insertDrill(dot.db, dot.scope, drill);
  insertAssignment(dot.db, dot.student, {
    ...{
      id: "g1",
      drillId: "d1",
      fundamentalId: "hinge",
      start: daysAgo(20),
      end: null,
      dose: "20 reps, 5 days a week",
    },
  });
  ({ family } = await openedFamily(dot));
});
beforeEach(() => {
  dot.db.sqlite.exec("DELETE FROM practice; DELETE FROM family_request");
});
afterAll(() => {
  academy.remove();
  stateAddress(null);
});

const log = (fields: Readonly<Record<string, string>>) =>
  logFamilyPractice(family, formOf({ day: dot.today, hurts: "no", ...fields }));
const rows = () =>
  readFamilyPractice(dot.db, family.pain, daysAgo(7)).map(
    ({ day, minutes, balls, pain, who, source, assignmentId }) => ({
      ...{ day, minutes, balls, pain, who, source, assignmentId },
    }),
  );
const errors = async () =>
  Object.fromEntries(
    (await loadFamily(family, "refused")).practice.form.fields.flatMap(({ name, error }) =>
      error === "" ? [] : [[name, error]],
    ),
  );

describe("practice that a family writes down", () => {
  it("is a row of the student’s with the drill in hand, by the name of the link, and stands on the coach’s page", () => {
    expect(log({ minutes: "12", felt: "easy" })).toBe("logged");
    expect(log({ day: daysAgo(1), balls: "40" })).toBe("logged");
    const by = { who: "mother’s phone", source: "family", assignmentId: "g1", pain: null };
    expect(rows()).toEqual([
      { day: daysAgo(1), minutes: null, balls: 40, ...by },
      { day: dot.today, minutes: 12, balls: null, ...by },
    ]);
    const { page } = loadPractice(dot, {});
    const seen = JSON.stringify(page);
    expect(seen).toContain("written down by the family");
    expect(seen).toContain("mother’s phone");
  });

  it("sent twice is saved once; another number sent from the same page after Back is another entry", () => {
    const key = randomUUID();
    expect([log({ minutes: "10", key }), log({ minutes: "10", key })]).toEqual(["logged", "logged"]);
    expect(rows()).toHaveLength(1);
    expect(log({ minutes: "15", key })).toBe("logged");
    expect(rows().map(({ minutes }) => minutes)).toEqual([10, 15]);
  });

  it("is asked about pain every time, and refused kindly where something can’t be, as it was typed", async () => {
    const cases: readonly (readonly [Readonly<Record<string, string>>, Readonly<Record<string, RegExp>>])[] = [
      [{ hurts: "", minutes: "10" }, { hurts: /whether something hurts/ }],
      [{ hurts: "maybe", minutes: "10" }, { hurts: /whether something hurts/ }],
      [{}, { minutes: /How many minutes/ }],
      [{ minutes: "0" }, { minutes: /Leave it empty/ }],
      [{ minutes: "-5" }, { minutes: /whole number/ }],
      [{ minutes: "301" }, { minutes: /more than 5 hours/ }],
      [{ balls: "1001" }, { balls: /more than 1000 balls/ }],
      [{ minutes: "99999999999999999999999" }, { minutes: /whole number/ }],
      [{ minutes: "1e3" }, { minutes: /whole number/ }],
      [{ minutes: "５" }, { minutes: /whole number/ }],
      [{ minutes: "10", day: daysAgo(2) }, { day: /choose one of these/ }],
      [{ minutes: "10", day: "2026-13-45" }, { day: /choose one of these/ }],
      [{ minutes: "10", felt: "<b>" }, { felt: /choose one of these/ }],
    ];
    for (const [fields, wrong] of cases) {
      expect([fields, log(fields)]).toEqual([fields, "refused"]);
      const said = await errors();
      expect([fields, Object.keys(said)]).toEqual([fields, Object.keys(wrong)]);
      for (const [name, pattern] of Object.entries(wrong)) expect(said[name]).toMatch(pattern);
      expect(await errors()).toEqual({});
    }
    expect(rows()).toEqual([]);
    log({ minutes: "twelve", balls: "4" });
    const { form } = (await loadFamily(family, "refused")).practice;
    expect(form.refusal).toContain("Nothing is saved yet");
    expect(form.fields.flatMap(({ name, value }) => (value === "" ? [] : [[name, value]]))).toEqual([
      ["day", dot.today],
      ["minutes", "twelve"],
      ["balls", "4"],
      ["hurts", "no"],
    ]);
  });

  it("a day’s sum counts what stands already", () => {
    expect([log({ minutes: "200" }), log({ minutes: "101" }), log({ minutes: "100" })]).toEqual([
      "logged",
      "refused",
      "logged",
    ]);
  });

  it("is undone by a tap; what the coach logged is not the family’s to undo, nor what another’s family logged", async () => {
    log({ minutes: "12" });
    const by = { who: "Ada", recordedAt: new Date().toISOString() };
    const coach = {
      id: "c1",
      day: dot.today,
      assignmentId: null,
      minutes: 5,
      balls: null,
      felt: null,
      source: "coach",
    } as const;
    insertPractice(dot.db, dot.student, [{ ...coach, ...by }]);
    const { undo } = (await loadFamily(family, undefined)).practice;
    expect(undo.map(({ label }) => label)).toEqual([expect.stringMatching(/^Undo for Dot: 12 minutes, /)]);
    const id = undo[0]?.hidden[0]?.value ?? "";
    const bea = addShared(academy, "Bea");
    const other = { ...family, student: bea.student };
    expect(takeFamilyPracticeBack(other, formOf({ practiceId: id }))).toBe("nothing");
    expect(takeFamilyPracticeBack(family, formOf({ practiceId: "c1" }))).toBe("nothing");
    expect(takeFamilyPracticeBack(family, formOf({ practiceId: id }))).toBe("back");
    expect(takeFamilyPracticeBack(family, formOf({ practiceId: id }))).toBe("nothing");
    expect(rows().map(({ who }) => who)).toEqual(["Ada"]);
  });
});

describe("a yes to pain", () => {
  it("replaces the task by “stop” at once, with the line for grown-ups, until it is said to be over; what was practised stays", async () => {
    const at = await loadFamily(family, undefined);
    expect([at.stop, at.task?.heading]).toEqual([null, "Your one task: Wall"]);
    expect(at.task?.lines).toEqual([
      "Stand by a wall.",
      "20 reps, 5 days a week",
      "Mind the wall.",
      expect.stringContaining("Don’t do double"),
    ]);
    expect(log({ minutes: "8", hurts: "yes", place: "wrist" })).toBe("hurts");
    const hurt = await loadFamily(family, "hurts");
    expect(hurt.task).toBeNull();
    expect(hurt.stop?.lines).toEqual([
      "You said that something hurts: wrist. No practice now.",
      "Does something hurt? Stop, and tell a grown-up today.",
      "Grown-ups: pain at night, numbness, pain down an arm or leg, or back pain that lasts more than a few days: no golf, and ask a doctor.",
    ]);
    expect(hurt.good.lines[0]).toContain("You told us that something hurts.");
    expect(JSON.stringify(hurt)).not.toContain("Stand by a wall.");
    expect(takeFamilyPracticeBack(family, formOf({ hurts: "over" }))).toBe("over");
    expect((await loadFamily(family, "over")).stop).toBeNull();
    expect(rows().map(({ minutes, pain }) => [minutes, pain])).toEqual([[8, null]]);
  });

  it("needs no practice, and is no day of practice; weeks later it still stands until it is over", async () => {
    expect(log({ hurts: "yes", place: "back" })).toBe("hurts");
    expect(rows()).toEqual([expect.objectContaining({ minutes: null, balls: null, pain: "back" })]);
    const hurt = await loadFamily(family, undefined);
    expect(hurt.practice.week.at(-1)?.spoken).toMatch(/: –$/);
    expect(hurt.good.lines.join()).not.toContain("of the last 7 days");
    dot.db.sqlite.prepare("UPDATE practice SET day = ?").run(daysAgo(30));
    expect((await loadFamily(family, undefined)).stop?.lines[0]).toContain("back");
  });

  it.each([
    ["minutes that are no number", { minutes: "twelve", place: "wrist" }, "wrist", { minutes: /whole number/ }],
    ["more balls than are likely", { balls: "1001", place: "wrist" }, "wrist", { balls: /more than 1000/ }],
    ["another day", { day: "2020-01-01", minutes: "5", place: "wrist" }, "wrist", { day: /choose one of these/ }],
    ["no place, and nothing hit", { minutes: "0" }, "elsewhere", { minutes: /Leave it empty/ }],
    ["a place off the list", { minutes: "-1", place: "soul" }, "elsewhere", { minutes: /whole number/ }],
  ] as const)("is saved beside %s, once, and only the rest comes back", async (_name, fields, pain, wrong) => {
    const sent = { key: randomUUID(), hurts: "yes", ...fields };
    expect([log(sent), log(sent)]).toEqual(["refused", "refused"]);
    expect(rows()).toEqual([
      { day: dot.today, minutes: null, balls: null, pain, who: "mother’s phone", source: "family", assignmentId: null },
    ]);
    const page = await loadFamily(family, "refused");
    expect([page.task, page.stop?.over?.label]).toEqual([null, "Dot: it does not hurt any more"]);
    const { form } = page.practice;
    expect(form.refusal).toMatch(/^That it hurts is saved\..* not saved, because of this: ./);
    for (const { name, value, error } of form.fields) {
      expect([name, value]).toEqual([
        name,
        (sent as Record<string, string>)[name] ?? (name === "day" ? dot.today : ""),
      ]);
      expect(error).toMatch((wrong as Record<string, RegExp>)[name] ?? /^$/);
    }
    // Mended and sent again it is the same form.
    const key = form.hidden[0]?.value ?? "";
    expect(log({ ...sent, key, day: dot.today, minutes: "5", balls: "" })).toBe("hurts");
    expect(rows().map(({ minutes, pain: place }) => [minutes, place])).toEqual(
      expect.arrayContaining([
        [null, pain],
        [5, null],
      ]),
    );
    expect(rows()).toHaveLength(2);
  });

  it("without a place, or with one off the list, hurts elsewhere; said again after it was over it stops again", async () => {
    for (const place of ["", "soul"]) {
      expect(log({ hurts: "yes", place })).toBe("hurts");
      expect(rows().map(({ pain }) => pain)).toEqual(["elsewhere"]);
      expect(takeFamilyPracticeBack(family, formOf({ hurts: "over" }))).toBe("over");
    }
    const sent = { key: randomUUID(), hurts: "yes", place: "knee", minutes: "many" };
    log(sent);
    takeFamilyPracticeBack(family, formOf({ hurts: "over" }));
    expect([rows(), log(sent), log({ ...sent, place: "foot" })]).toEqual([[], "refused", "refused"]);
    expect(rows().map(({ pain }) => pain)).toEqual(expect.arrayContaining(["knee", "foot"]));
  });
});
