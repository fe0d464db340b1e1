import { randomUUID } from "node:crypto";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadArchive } from "@/app/_server/archive/load-archive";
import { loadReport } from "@/app/_server/archive/load-report";
import { loadTakeOut } from "@/app/_server/archive/load-take-out";
import { packArchive, tablesOf } from "@/app/_server/archive/pack-archive";
import { findFormDraft } from "@/app/_server/draft/form-draft";
import { admitMachine, admitToStudent, type StudentViewer, seesPain } from "@/app/_server/gate";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { addEvent, changeRebaselines, eventDraft } from "@/app/_server/season/event-desk";
import { loadEvent, loadEventForm, loadEvents } from "@/app/_server/season/load-events";
import { loadKnown } from "@/app/_server/season/load-known";
import { loadSeason, loadSeasonPage } from "@/app/_server/season/load-season";
import { loadPractice } from "@/app/_server/season/practice-desk";
import { loadHistorySource } from "@/app/_server/session/load-history";
import { readEventLog } from "@/db/read/events";
import { insertCharge } from "@/db/write/people";
import { formOf } from "./first-student";
import { addTo, form } from "./inviting";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";
import { fillSeason, filmDays } from "./reread-season";

/*
 * TRUST.md, promise 8: what hurts is told to the coach in charge, own or cover, and to the family; a director reads "pause" and
 * its days. Each form in which a record leaves the server is made here for each of them.
 */

/** Words that tell of pain; in nobody else's page stand any of them. */
const TELLING = /ankle|for an injury|["\\,]injury["\\,]|left shin|stiff since the fall/;
const DRAFT = "0f0f0f0f-0f0f-4f0f-8f0f-0f0f0f0f0f0f";

let academy: PeopleAcademy;
let student: string;
let eventId: string;

function as(userId: string): StudentViewer {
  const viewer = academy.viewer(userId);
  const scope = admitToStudent(viewer, student);
  if (!scope) throw new Error(`${userId} doesn't reach the student`);
  return { ...viewer, student: scope };
}

beforeAll(async () => {
  academy = await startPeopleAcademy();
  const ada = academy.viewer(academy.ownerId);
  student = addTo(ada, "Nia");
  for (const [userId, roles] of [
    ["bo", ["coach"]],
    ["cy", ["coach"]],
    ["di", ["director"]],
    ["both", ["director", "coach"]],
  ] as const)
    await academy.add({ userId, name: userId, roles });
  await academy.add({ userId: "ed", name: "Ed", roles: ["assistant"], assists: ["bo"] });
  giveStudents(ada, form({ students: [student], coach: "bo" }));
  const today = ada.today;
  insertCharge(academy.db, {
    ...{ id: "cover", studentId: student, coachId: "cy", kind: "cover" },
    ...{ fromDay: today, untilDay: today, who: "Ada", recordedAt: new Date().toISOString() },
  });
  fillSeason(as("bo"), as("bo").student);
  const days = filmDays(as("bo"));
  const typed = { kind: "injury", day: days[1] ?? "", endDay: days[2] ?? "", place: "ankle" };
  const made = await addEvent(as("bo"), formOf(typed));
  if (made.kind !== "added")
    throw new Error(JSON.stringify(findFormDraft(as("bo"), eventDraft(student), made.draftId)));
  eventId = made.eventId;
  await changeRebaselines(as("bo"), eventId, form({ rebaselines: "hinge", why: "stiff since the fall" }));
  const said = academy.db.sqlite.prepare(
    "INSERT INTO practice (id, student_id, day, minutes, source, pain, who, recorded_at) VALUES (?, ?, ?, ?, 'family', ?, 'family', ?)",
  );
  said.run("with-minutes", student, today, 10, "left shin", `${today}T08:00:00.000Z`);
  said.run("pain-alone", student, today, null, "ankle", `${today}T09:00:00.000Z`);
});
afterAll(() => academy.remove());

/** Everything that can be made of the record, by name. */
async function everyForm(viewer: StudentViewer): Promise<Readonly<Record<string, unknown>>> {
  const loaded = await loadArchive(viewer, viewer.student);
  const whole = await loadArchive(viewer, "everybody");
  const zip = unzipSync(packArchive(viewer, loaded));
  return {
    season: await loadSeasonPage(viewer, undefined),
    "season for files": await loadSeason(viewer, undefined),
    report: await loadReport(viewer, undefined),
    events: loadEvents(viewer),
    "events for files": loadEvents(viewer, "left-out"),
    event: loadEvent(viewer, eventId, DRAFT),
    "event form": loadEventForm(viewer, DRAFT, {}),
    "form for it": loadEventForm(viewer, DRAFT, { instead: eventId }),
    practice: loadPractice(viewer, {}),
    known: await loadKnown(viewer, {}),
    history: loadHistorySource(viewer),
    "take out": await loadTakeOut(viewer),
    archive: loaded.archive,
    "its tables": tablesOf(loaded),
    "its zip": Object.values(zip).map((file) => strFromU8(file)),
    "academy archive": whole.archive,
  };
}

/** What the words of a form may hold: the names of its choices aren't somebody's data. */
function telling(name: string, made: unknown): boolean {
  const text = JSON.stringify(made);
  // The lists of choices and the archive's page of explanations say the words of everybody.
  const plain = text
    .replace(/"options":\[[^\]]*\]/g, "")
    .replace(/injury pauses, changes of reader|an injury pause|Only that there is a pause, and where it hurts/g, "");
  return name === "event form" ? false : TELLING.test(plain);
}

describe("who may know what hurts", () => {
  it("the coach in charge today, own or cover; no director, assistant or former coach; a program on this machine", async () => {
    const sees = (userId: string) => {
      const viewer = academy.viewer(userId);
      const scope = admitToStudent(viewer, student);
      return scope === null ? "no student" : seesPain(viewer, scope) !== null;
    };
    expect(["bo", "cy", "di", "both", "ed", academy.ownerId].map(sees)).toEqual([
      true,
      true,
      false,
      false,
      false,
      false,
    ]);
    const machine = await admitMachine({ choice: "own", locale: null });
    expect(machine && seesPain(machine, as("bo").student)).not.toBeNull();
    giveStudents(academy.viewer(academy.ownerId), form({ students: [student], coach: "both" }));
    expect(sees("both")).toBe(true);
    expect(sees("bo")).toBe("no student");
    giveStudents(academy.viewer(academy.ownerId), form({ students: [student], coach: "bo" }));
    expect(["bo", "both"].map(sees)).toEqual([true, false]);
  });

  it("a director reads of a pause its days and nothing else, in every form of the record; the coach reads it where it belongs", async () => {
    const [coach, director] = [await everyForm(as("bo")), await everyForm(as("di"))];
    const told = (forms: Readonly<Record<string, unknown>>) =>
      Object.keys(forms).filter((name) => telling(name, forms[name]));
    expect(told(director)).toEqual([]);
    expect(told(coach)).toEqual([
      ...[
        "season",
        "events",
        "event",
        "form for it",
        "practice",
        "archive",
        "its tables",
        "its zip",
        "academy archive",
      ],
    ]);
    // The pause itself is told.
    for (const name of ["events", "event", "season", "archive"])
      expect(JSON.stringify(director[name])).toContain("pause");
    expect(JSON.stringify(director.season)).not.toContain("hurts");
    console.log(`promise 8: ${Object.keys(coach).length * 2} forms of one record, as coach in charge and as director`);
  });

  it("the archive of a director says that pain notes were left out and why; the coach's says where they stand", async () => {
    const readme = async (userId: string) =>
      strFromU8(
        unzipSync(packArchive(as(userId), await loadArchive(as(userId), "everybody")))["README.txt"] ??
          new Uint8Array(),
      );
    expect(await readme("di")).toContain("pain notes are for the coach in charge and the family");
    expect(await readme("bo")).toContain("it stands in archive.json alone");
    expect(JSON.stringify(await loadTakeOut(as("di")))).toContain("pain notes are for the coach in charge");
    const practice = async (userId: string) =>
      (await loadArchive(as(userId), as(userId).student)).archive.students[0]?.practice.map(({ id, pain }) => [
        id,
        pain,
      ]);
    expect(await practice("bo")).toEqual([
      ["with-minutes", "left shin"],
      ["pain-alone", "ankle"],
    ]);
    expect(await practice("di")).toEqual([["with-minutes", null]]);
  });

  it("that there was nothing but pain on a day is no entry of practice for anybody; the coach is told it with a caution", () => {
    const [coach, director] = [loadPractice(as("bo"), {}).page, loadPractice(as("di"), {}).page];
    const entries = (page: typeof coach) => page.parts.find((part) => part.press)?.table?.rows.length;
    expect([entries(coach), entries(director)]).toEqual([1, 1]);
    expect(coach.parts[0]?.paragraphs).toHaveLength(3);
    expect(coach.parts[0]?.paragraphs[0]).toContain("licensed clinician");
    expect(director.parts[0]?.margin).toBe("Weeks");
  });
});

describe("a director enters a pause", () => {
  it("is offered one by its days, is refused an injury, and mends the days of one without taking away what it said", async () => {
    const offered = (userId: string) => loadEventForm(as(userId), DRAFT, {}).kinds.links.map(({ label }) => label);
    expect(offered("di")).toContain("pause");
    expect(offered("di")).not.toContain("pause for an injury");
    expect(offered("bo")).not.toContain("pause");
    const day = filmDays(as("bo"))[3] ?? "";
    const refused = await addEvent(as("di"), formOf({ kind: "injury", day, place: "ankle", draft: randomUUID() }));
    expect(refused.kind).toBe("refused");
    const mended = await addEvent(as("di"), formOf({ kind: "pause", day, instead: eventId }));
    if (mended.kind !== "added") throw new Error("the pause was refused");
    const log = readEventLog(academy.db, as("bo").student, seesPain(as("bo"), as("bo").student));
    expect(log.find(({ id }) => id === mended.eventId)).toMatchObject({ kind: "injury", place: "ankle", day });
    expect(JSON.stringify(loadEvent(as("di"), mended.eventId, DRAFT))).not.toMatch(TELLING);
    const plain = await addEvent(as("di"), formOf({ kind: "pause", day }));
    if (plain.kind !== "added") throw new Error("the pause was refused");
    const { form: opened, kinds } = loadEventForm(as("bo"), DRAFT, { instead: plain.eventId });
    expect(opened.hidden).toContainEqual({ name: "kind", value: "pause" });
    expect(kinds.links.map(({ label }) => label)).toEqual(expect.arrayContaining(["pause", "pause for an injury"]));
  });
});
