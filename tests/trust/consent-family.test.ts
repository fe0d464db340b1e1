import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { logFamilyPractice } from "@/app/_server/family/family-desk";
import { mayMakeLinks } from "@/app/_server/family/link-desk";
import { loadFamily } from "@/app/_server/family/load-family";
import type { StudentViewer } from "@/app/_server/gate";
import { readFamilyPractice } from "@/db/read/family-practice";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { ConsentKind } from "@/lib/domain/consent";
import { addShared, cookieOf, familyAt, follow, linkFor, PUBLIC } from "../app/server/family-academy";
import { formOf } from "../app/server/first-student";
import { type PeopleAcademy, startPeopleAcademy } from "../app/server/people-academy";
import { painScope } from "../db/academy-fixture";
import { countCases } from "./count-cases";

const cases = countCases("P7 no consent in force, nothing through a family’s link", 25);

/** Year of birth of somebody for whom a guardian speaks, whenever the tests run. */
const CHILD = new Date().getFullYear() - 12;

let academy: PeopleAcademy;
let dot: StudentViewer;
let page: string;
let token: string;
let cookie: string;

beforeAll(async () => {
  vi.stubEnv("PROOFBAND_ORIGIN", PUBLIC);
  academy = await startPeopleAcademy();
  dot = addShared(academy, "Dot", { birthYear: String(CHILD) });
  ({ id: page, token } = linkFor(dot, "mother’s phone"));
  cookie = await cookieOf(token);
});
afterAll(() => {
  academy.remove();
  vi.unstubAllEnvs();
});

const day = (plus: number): string => dayFromNumber(dayNumber(dot.today) + plus);

/** Consent of a kind as it stands on file: from, until, withdrawn, and the birth year. */
const STATES = {
  given: () => [day(-90), day(90), null, CHILD],
  none: () => null,
  withdrawn: () => [day(-90), null, day(0), CHILD],
  lapsed: () => [day(-90), day(-1), null, CHILD],
  "own-age": () => [day(-90), null, null, 1990],
  "not-yet": () => [day(1), null, null, CHILD],
} as const satisfies Record<string, () => readonly [string, string | null, string | null, number] | null>;
const LACKING = ["none", "withdrawn", "lapsed", "own-age", "not-yet"] as const;

/** The other kind is in force, as the student's own word where a guardian's would count no more. */
function put(kind: ConsentKind, state: keyof typeof STATES): void {
  const { sqlite } = dot.db;
  const { studentId } = dot.student;
  const row = STATES[state]();
  const insert = sqlite.prepare(
    `INSERT INTO consent (id, student_id, kind, given_by, giver_is, from_day, until_day, withdrawn_on, recorded_at)
     VALUES (?, ?, ?, 'mother', ?, ?, ?, ?, ?)`,
  );
  sqlite.prepare("DELETE FROM consent WHERE student_id = ?").run(studentId);
  sqlite.prepare("UPDATE student SET birth_year = ? WHERE id = ?").run(row?.[3] ?? CHILD, studentId);
  const now = new Date().toISOString();
  if (row) insert.run(randomUUID(), studentId, kind, "guardian", ...row.slice(0, 3), now);
  const other = kind === "share" ? "measure" : "share";
  insert.run(randomUUID(), studentId, other, "student", day(-90), null, null, now);
}

describe.each(LACKING)("P7: a consent to share that is %s", (state) => {
  it("lets nobody in by a link that was made before, and lets none be made", async () => {
    put("share", state);
    expect(await familyAt(page, cookie)).toBeNull();
    const opened = await follow(token);
    expect([opened.status, opened.headers.getSetCookie()]).toEqual([404, []]);
    expect(mayMakeLinks(dot)).toBe("no-consent");
    cases.add(3);
    put("share", "given");
    expect(await familyAt(page, cookie)).not.toBeNull();
    expect(mayMakeLinks(dot)).toBe("yes");
  });
});

describe.each(LACKING)("P7: a consent to measure that is %s", (state) => {
  const rows = () => readFamilyPractice(dot.db, painScope(dot.student.studentId), day(-7));

  it("takes no practice from the family, keeps what was typed, and takes it once the consent is there", async () => {
    put("measure", state);
    dot.db.sqlite.exec("DELETE FROM practice");
    const family = await familyAt(page, cookie);
    if (!family) throw new Error("the page is shared");
    const typed = { key: randomUUID(), day: dot.today, minutes: "15", hurts: "no" };
    expect(logFamilyPractice(family, formOf(typed))).toBe("refused");
    expect(rows()).toEqual([]);
    put("measure", "given");
    expect(logFamilyPractice(family, formOf(typed))).toBe("logged");
    expect(rows()).toHaveLength(1);
    cases.add();
  });

  it("still takes that something hurts, and nothing beside it", async () => {
    put("measure", state);
    dot.db.sqlite.exec("DELETE FROM practice");
    const family = await familyAt(page, cookie);
    if (!family) throw new Error("the page is shared");
    const said = { key: randomUUID(), day: dot.today, minutes: "15", hurts: "yes", place: "back" };
    expect(logFamilyPractice(family, formOf(said))).toBe("refused");
    expect(rows().map(({ minutes, pain }) => [minutes, pain])).toEqual([[null, "back"]]);
    const { form } = (await loadFamily(family, "refused")).practice;
    expect(form.refusal).toMatch(/^That it hurts is saved\..* not saved, .* the yes to that has ended/);
    expect(form.fields.find(({ name }) => name === "minutes")?.value).toBe("15");
    expect(logFamilyPractice(family, formOf({ ...said, key: randomUUID(), minutes: "" }))).toBe("hurts");
    cases.add();
  });
});
