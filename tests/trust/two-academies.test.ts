import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { admitPerson, admitToStudent, type Viewer } from "@/app/_server/gate";
import { insertAcademy } from "@/db/write/academies";
import { insertEvent } from "@/db/write/events";
import { insertAccount, insertPerson } from "@/db/write/people";
import { insertStudent } from "@/db/write/students";
import type { Role } from "@/lib/domain/person";
import { type PeopleAcademy, startPeopleAcademy } from "../app/server/people-academy";
import { enterFilm, filmDays } from "../app/server/reread-season";
import { countingStamp } from "../db/academy-fixture";
import { countCases } from "./count-cases";
import { everyLoad } from "./every-load";

/*
 * A9: two academies of one file with equal names. What is made for anybody of the one is the same, letter by letter, whatever
 * stands in the other; and what is made for a coach is the same however few students another coach has.
 */

const A9 = countCases("A9", 50);
const NOW = "2026-01-01T08:00:00.000Z";
/** Stands in the other academy alone, in every text. */
const OTHERS = /zqother/;
const PEOPLE: readonly (readonly [string, readonly Role[]])[] = [
  ["director", ["director"]],
  ["coach", ["coach"]],
  ["second", ["coach"]],
  ["owner", ["owner"]],
  ["helper", ["assistant"]],
];

let academy: PeopleAcademy;

function viewerOf(academyId: string, userId: string): Viewer {
  const viewer = admitPerson({ db: academy.db, academyId, choice: "own" }, userId, { choice: "own", locale: "en" });
  if (!viewer) throw new Error(`${userId} is nobody there`);
  return viewer;
}

async function addPeople(academyId: string, prefix: string): Promise<void> {
  for (const [name, roles] of PEOPLE) {
    const userId = `${prefix}${name}`;
    const now = new Date(NOW);
    insertAccount(academy.db, { userId, name, email: `${userId}@x.example`, passwordHash: "s:h", now });
    const assists = roles.includes("assistant") ? [`${prefix}coach`] : [];
    insertPerson(academy.db, { userId, academyId, roles, assists, addedAt: NOW, addedBy: "owner" });
  }
}

/** A student of a coach with films; `mark` stands in every text of theirs but the alias. */
function addStudent(academyId: string, coachId: string, id: string, alias: string, mark: string): void {
  const { db } = academy;
  const coach = viewerOf(academyId, coachId);
  const facts = { id, alias, birthYear: 2012, hand: "right", zone: "UTC", clubs: mark } as const;
  const consent = {
    kind: "measure",
    givenBy: mark,
    giverIs: "guardian",
    from: "2026-01-01",
    until: null,
    withdrawnOn: null,
  } as const;
  // Whoever adds a student has them in charge.
  insertStudent(db, coach.scope, facts, consent, countingStamp(id));
  const student = admitToStudent(viewerOf(academyId, coachId), id);
  if (!student) throw new Error("the coach doesn't reach the student");
  filmDays(coach).forEach((day, at) => {
    const now = `${day}T18:00:00.000Z`;
    enterFilm(coach, student, { id: `${id}-film${at}`, day, reference: `${mark} ${at}`, now }, [80 + at, 81 + at, 83]);
  });
  const happened = {
    id: `${id}-clubs`,
    kind: "new-club",
    day: filmDays(coach)[3] ?? "",
    note: mark,
    rebaselines: [],
  } as const;
  insertEvent(db, student, happened, { who: mark, now: NOW });
}

const students = (academyId: string): readonly string[] =>
  academy.db.sqlite.prepare<[string], string>("SELECT id FROM student WHERE academy_id = ?").pluck().all(academyId);

async function madeFor(academyId: string, prefix = "") {
  const made = new Map<string, ReadonlyMap<string, string>>();
  for (const [name] of PEOPLE) {
    const viewer = viewerOf(academyId, `${prefix}${name}`);
    made.set(name, await everyLoad(viewer, students(academyId)));
  }
  return made;
}

/** What differs between two makings, by who and what. */
function differing(
  before: Awaited<ReturnType<typeof madeFor>>,
  after: Awaited<ReturnType<typeof madeFor>>,
): readonly string[] {
  return [...before].flatMap(([name, made]) => {
    const again = after.get(name);
    return [...made].filter(([row, text]) => again?.get(row) !== text).map(([row]) => `${name}: ${row}`);
  });
}

beforeAll(async () => {
  academy = await startPeopleAcademy();
  await addPeople(academy.academyId, "");
  addStudent(academy.academyId, "coach", "a1", "Nia", "mine");
  addStudent(academy.academyId, "coach", "a2", "Tove", "mine");
  addStudent(academy.academyId, "second", "a3", "Nia", "mine");
});
afterAll(() => academy.remove());

describe("A9", () => {
  it("another academy with the same names changes no letter of what is made, and shows nothing of the first", async () => {
    const before = await madeFor(academy.academyId);
    const row = academy.db.sqlite
      .prepare<[], { name: string; owner_name: string }>("SELECT name, owner_name FROM academy")
      .get();
    insertAcademy(academy.db, {
      ...{ id: "b", name: row?.name ?? "", ownerName: row?.owner_name ?? "", zone: "UTC", locale: "en", kind: "own" },
      ...{ fixedToday: null, seasonStart: "2026-01-01", createdAt: NOW },
    });
    await addPeople("b", "b-");
    for (const [id, alias] of [
      ["b1", "Nia"],
      ["b2", "Tove"],
      ["b3", "Ulla"],
    ] as const)
      addStudent("b", "b-coach", id, alias, "zqother");
    const others = await madeFor("b", "b-");
    const after = await madeFor(academy.academyId);
    expect(differing(before, after)).toEqual([]);
    for (const [name, made] of after)
      for (const [what, text] of made) {
        A9.add();
        expect([name, what, OTHERS.test(text)]).toEqual([name, what, false]);
      }
    for (const [name, made] of others)
      for (const [what, text] of made) {
        A9.add();
        expect([name, what, /"a[123]"|\bmine\b/.test(text)]).toEqual([name, what, false]);
      }
    expect([...others.values()].some((made) => [...made.values()].some((text) => OTHERS.test(text)))).toBe(true);
  });

  it("nobody of one academy reaches a student of the other, and nobody is somebody there", () => {
    for (const [name] of PEOPLE)
      for (const [from, prefix, id] of [
        [academy.academyId, "", "b1"],
        ["b", "b-", "a1"],
      ] as const) {
        A9.add(2);
        expect(admitToStudent(viewerOf(from, `${prefix}${name}`), id)).toBeNull();
        const there = { db: academy.db, academyId: from === "b" ? academy.academyId : "b", choice: "own" } as const;
        expect(admitPerson(there, `${prefix}${name}`, { choice: "own", locale: "en" })).toBeNull();
      }
  });
});

describe("small groups", () => {
  /** Where a number over students of others is told to a coach; any other place that changes with them is a crossing. */
  const COUNTED = ["coach: /settings/clubs"];

  it("a coach's pages are the same with 1 to 4 students of another coach, but for the word that few are left out", async () => {
    const coach = async () =>
      new Map([["coach", await everyLoad(viewerOf(academy.academyId, "coach"), students(academy.academyId))]]);
    const one = await coach();
    expect(one.get("coach")?.get("/settings/clubs")).toContain("fewer than five of others");
    for (let more = 2; more <= 4; more++) {
      addStudent(academy.academyId, "second", `more${more}`, `Nia ${more}`, "zqother");
      const again = await coach();
      A9.add(again.get("coach")?.size ?? 0);
      expect(differing(one, again)).toEqual([]);
    }
    addStudent(academy.academyId, "second", "more5", "Nia 5", "zqother");
    const five = await coach();
    expect(differing(one, five)).toEqual(COUNTED);
    expect(five.get("coach")?.get("/settings/clubs")).not.toContain("fewer than five");
    // Two of one's own and five of others.
    expect(five.get("coach")?.get("/settings/clubs")).toContain('"56","7"');
  });

  it("the owner is told how many students a coach has from five on", async () => {
    const people = async () => (await everyLoad(viewerOf(academy.academyId, "owner"), [])).get("/people") ?? "";
    const text = await people();
    expect(text).toContain('"fewer than five"');
    expect(text).toMatch(/"second",[^[\]]*"5"/);
    expect(text).not.toMatch(/"coach",[^[\]]*"2"/);
  });
});
