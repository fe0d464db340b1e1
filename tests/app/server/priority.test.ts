import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { withdrawConsent } from "@/app/_server/consent/consent-desk";
import { findFormDraft } from "@/app/_server/draft/form-draft";
import { admitToStudent, type StudentViewer } from "@/app/_server/gate";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { loadEveryone } from "@/app/_server/roster/load-everyone";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { addEvent } from "@/app/_server/season/event-desk";
import { loadPriority } from "@/app/_server/season/load-priority";
import { loadSeason, loadSeasonPage } from "@/app/_server/season/load-season";
import { choosePriorityByCoach, priorityDraft } from "@/app/_server/season/priority-desk";
import { afterAdding } from "@/app/_server/season/student-desk";
import { BY_ORDER } from "@/lib/ingest/parse-priority-form";
import { workOf } from "@/lib/report/roster-rows";
import { formOf } from "./first-student";
import { addTo, form } from "./inviting";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";
import { enterFilm, fillSeason, filmDays } from "./reread-season";

let academy: PeopleAcademy;
let nia: string;
let oli: string;

function as(userId: string, studentId = nia): StudentViewer {
  const viewer = academy.viewer(userId);
  const student = admitToStudent(viewer, studentId);
  if (!student) throw new Error(`${userId} doesn't reach the student`);
  return { ...viewer, student };
}

beforeAll(async () => {
  academy = await startPeopleAcademy();
  const ada = academy.viewer(academy.ownerId);
  [nia, oli] = [addTo(ada, "Nia"), addTo(ada, "Oli")];
  await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
  await academy.add({ userId: "di", name: "Di", roles: ["director"] });
  giveStudents(ada, form({ students: [nia, oli], coach: "bo" }));
  fillSeason(as("bo"), as("bo").student);
});
afterAll(() => academy.remove());

function choose(fundamentalId: string, more: Readonly<Record<string, string>> = {}) {
  const typed = { fundamentalId, clubGroup: "iron", reason: "She can feel it.", draft: randomUUID(), version: "0" };
  return choosePriorityByCoach(as("bo"), formOf({ ...typed, writer: randomUUID(), ...more }));
}

const ranked = async (userId: string): Promise<string | null> => {
  const everyone = await loadEveryone(academy.viewer(userId));
  const entry = everyone.entries.find(({ student }) => student.id === nia);
  return entry === undefined ? null : (workOf(everyone, entry).inHand?.item.fundamental.id ?? null);
};

const rowOf = async (userId: string) => {
  const { evidence } = await loadRoster(academy.viewer(userId), { sort: undefined, page: undefined });
  return evidence.rows.find(({ studentId }) => studentId === nia);
};

describe("what is in hand", () => {
  it("is the same on the season's page and on the roster", async () => {
    const page = await loadSeasonPage(as("bo"), undefined);
    const inHand = page.chain
      .flatMap(({ entries }) => entries)
      .map((entry) => (entry.kind === "measured" ? entry.row : entry))
      .filter(({ place }) => place === "in-hand");
    expect(inHand.map(({ fundamentalId }) => fundamentalId)).toEqual([await ranked("bo")]);
  });

  it("is what the coach chose, with who and why beside what the order of work says, until that chooses again", async () => {
    const before = (await loadSeasonPage(as("bo"), undefined)).title;
    expect(choose("tilt-kept")).toEqual({ kind: "chosen", clubGroup: "iron" });
    const page = await loadSeasonPage(as("bo"), undefined);
    expect(page.title).toBe("Nia: Tilt kept, chosen by the coach");
    expect(page.next?.notes[0]).toMatch(/^Put in hand by Bo on .*: “She can feel it\.”$/);
    expect(page.next?.notes[1]).toMatch(/^The order of work would say /);
    expect([await ranked("bo"), (await rowOf("bo"))?.workNote]).toEqual(["tilt-kept", "Chosen by the coach."]);
    expect(choose(BY_ORDER, { reason: "It has done its part." }).kind).toBe("chosen");
    expect((await loadSeasonPage(as("bo"), undefined)).title).toBe(before);
    const { page: told } = await loadPriority(as("bo"), {});
    expect(told.parts[1]?.table?.rows.map(({ cells }) => cells.slice(1))).toEqual([
      ["Let the order of work choose", "It has done its part.", "Bo"],
      ["Tilt kept", "She can feel it.", "Bo"],
    ]);
  });

  it("sent twice is one choice; without a reason nothing is chosen and what was typed is kept", async () => {
    const count = () => academy.db.sqlite.prepare("SELECT count(*) FROM priority_choice").pluck().get() as number;
    const before = count();
    const draft = randomUUID();
    expect([choose("hinge", { draft }), choose("hinge", { draft })].map(({ kind }) => kind)).toEqual([
      "chosen",
      "chosen",
    ]);
    expect(count()).toBe(before + 1);
    const refused = choose("hip-sway", { reason: " " });
    if (refused.kind !== "refused") throw new Error("taken without a reason");
    const kept = findFormDraft(as("bo"), priorityDraft(nia), refused.draftId);
    expect([kept?.errors.reason !== undefined, new Map(kept?.entries).get("fundamentalId")]).toEqual([
      true,
      "hip-sway",
    ]);
    expect(count()).toBe(before + 1);
    choose(BY_ORDER);
  });

  it.each([
    ["a fundamental that nobody has", { fundamentalId: "own-nothing" }],
    ["clubs that nobody has", { clubGroup: "putter" }],
    ["a reason with marks that can't be seen", { reason: "a\u202eb" }],
  ])("takes no choice of %s", (_what, over) => {
    expect(choose("hinge", over).kind).toBe("refused");
  });

  it("stops for a pause: its days to a director, the word pain only to the coach in charge", async () => {
    const made = await addEvent(as("bo"), formOf({ kind: "injury", day: as("bo").today, place: "wrist" }));
    expect(made.kind).toBe("added");
    const [told, veiled] = [await loadSeasonPage(as("bo"), undefined), await loadSeasonPage(as("di"), undefined)];
    expect([told.title, veiled.title]).toEqual(["Nia: no work for now", "Nia: no work for now"]);
    expect(told.next?.heading).toMatch(/^Stopped for pain since /);
    expect(veiled.next?.heading).toMatch(/^Paused since /);
    expect(JSON.stringify(veiled.next)).not.toMatch(/pain|wrist/i);
    expect((await loadSeason(as("bo"), undefined)).next?.heading).toMatch(/^Paused since /);
    expect([await ranked("bo"), (await rowOf("di"))?.workNote]).toEqual([
      null,
      expect.stringMatching(/^Paused since /),
    ]);
    academy.db.sqlite.exec("UPDATE event SET voided_at = '2031-01-01T00:00:00.000Z' WHERE kind = 'injury'");
  });

  it("stops for pain that was said with practice, on the roster too, for the coach in charge alone", async () => {
    const { today } = as("bo");
    academy.db.sqlite
      .prepare(
        "INSERT INTO practice (id, student_id, day, minutes, source, pain, who, recorded_at) VALUES ('p', ?, ?, NULL, 'family', 'knee', 'family', ?)",
      )
      .run(nia, today, `${today}T08:00:00.000Z`);
    expect((await rowOf("bo"))?.workNote).toMatch(/^Stopped for pain since /);
    expect((await rowOf("di"))?.workNote).not.toMatch(/pain|pause/i);
    expect((await loadSeasonPage(as("di"), undefined)).title).not.toContain("no work");
    academy.db.sqlite.exec("DELETE FROM practice WHERE id = 'p'");
  });

  it("a view that was asked for twice and didn't come blocks nothing any more, and what it shows is named unknown", async () => {
    const body = { fundamentals: [{ id: "foot-line", swings: 3 }], views: ["face-on", "down-the-line"], care: [] };
    const days = filmDays(as("bo"));
    const told = academy.db.sqlite.prepare(
      "INSERT INTO film_plan (id, student_id, club_group, made_on, due_on, body, who, recorded_at) VALUES (?, ?, 'iron', ?, ?, ?, 'Bo', ?)",
    );
    const notes = async () => (await loadSeasonPage(as("bo"), undefined)).next?.beside.join(" ") ?? "";
    const tell = (day: string) => told.run(day, nia, day, day, JSON.stringify(body), `${day}T20:00:00.000Z`);
    tell(days[4] ?? "");
    expect(await notes()).not.toContain("Unknown:");
    tell(days[5] ?? "");
    expect(await notes()).toContain("Unknown: Foot line, Posture bend, Shaft line.");
    const everyone = await loadEveryone(academy.viewer("bo"));
    const entry = everyone.entries.find(({ student }) => student.id === nia);
    const unknown = entry === undefined ? [] : workOf(everyone, entry).unknown.map(({ fundamental }) => fundamental.id);
    expect(unknown).toEqual(["foot-line", "posture-bend", "shaft-line"]);
    academy.db.sqlite.exec("UPDATE film_plan SET voided_at = '2031-01-01T00:00:00.000Z'");
    expect(await notes()).not.toContain("Unknown:");
  });

  it("asks for a consent before something new is chosen; letting the order of work choose asks for none", () => {
    expect(choose("hinge").kind).toBe("chosen");
    const no = { kinds: "measure", withdrawnOn: as("bo").today, withdrawnBy: "father" };
    expect(withdrawConsent(as("bo"), formOf(no)).kind).toBe("saved");
    expect(choose("hip-sway").kind).toBe("refused");
    expect(choose(BY_ORDER).kind).toBe("chosen");
  });
});

describe("the first films of a student", () => {
  const page = () => loadSeasonPage(as("bo", oli), undefined);
  const film = (id: string, day: string, values: readonly number[]) =>
    enterFilm(as("bo", oli), as("bo", oli).student, { id, day, reference: null, now: `${day}T10:00:00.000Z` }, values);

  it("none: what is missing in one line, every fundamental of the order unmeasured, nothing in hand", async () => {
    const { firstWeek, next, chain } = await page();
    expect(firstWeek?.heading).toBe("Two films on two days, before the first drill");
    expect([next, firstWeek?.table]).toEqual([null, null]);
    expect(chain.flatMap(({ entries }) => entries.map(({ kind }) => kind))).toEqual(Array(10).fill("unmeasured"));
  });

  it("one: the level with its doubt, the smallest change by a date, and no drill before the second", async () => {
    const { today } = as("bo", oli);
    const days = [7, 3].map((before) => new Date(Date.parse(today) - before * 86_400_000).toISOString().slice(0, 10));
    film("first", days[0] ?? "", [71, 73, 72, 74, 70]);
    const { firstWeek, next } = await page();
    expect(firstWeek?.heading).toBe("One film more, on another day, before the first drill");
    expect(firstWeek?.table?.rows[0]?.cells[3]).toMatch(/^\d+°, by \d+ \w+$|^none of a likely size/);
    expect(next?.action).toBeNull();
    film("second", days[1] ?? "", [72, 71, 74, 73, 70]);
    const second = await page();
    expect(second.firstWeek?.heading).toBe("The first drill can begin: there are films of 2 days");
    expect(second.next?.action ?? second.next?.drillFor).toBeTruthy();
  });

  it("a yes to pain leads on to the pause, which a director without a student in charge has without its reason", () => {
    const yes = formOf({ pain: "yes" });
    expect(afterAdding(academy.viewer("bo"), oli, yes)).toBe(`/students/${oli}/events/new?kind=injury`);
    expect(afterAdding(academy.viewer("di"), oli, yes)).toBe(`/students/${oli}/events/new?kind=pause`);
    expect(afterAdding(academy.viewer("bo"), oli, formOf({ pain: "no" }))).toBe(`/students/${oli}`);
  });
});
