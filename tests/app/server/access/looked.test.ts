import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, expect, it } from "vitest";
import { loadLooked } from "@/app/_server/access/load-looked";
import { noteLooks } from "@/app/_server/access/looks";
import { loadTakeOut } from "@/app/_server/archive/load-take-out";
import { admitToStudent, type StudentViewer } from "@/app/_server/gate";
import { Looked } from "@/app/_ui/looked/looked";
import { mergeStudents } from "@/db/write/merge-students";
import { insertCharge } from "@/db/write/people";
import { updateChangeUndone } from "@/db/write/record-changes";
import { insertStudent } from "@/db/write/students";
import { countingStamp, NOW } from "../../../db/academy-fixture";
import { type PeopleAcademy, startPeopleAcademy } from "../people-academy";

let people: PeopleAcademy;

beforeAll(async () => {
  people = await startPeopleAcademy();
  const { db } = people;
  const { scope } = people.viewer(people.ownerId);
  const bird = { birthYear: null, hand: "right", zone: "UTC", clubs: "" } as const;
  for (const [id, alias] of [
    ["one", "Dot"],
    ["two", "<i>Dotty</i>"],
  ] as const)
    insertStudent(db, { ...scope, userId: null }, { id, alias, ...bird }, null, countingStamp(id));
  for (const [userId, studentId] of [
    ["robin", "one"],
    ["wagtail", "two"],
  ] as const) {
    await people.add({ userId, name: userId === "robin" ? "Robin" : "<b>Wagtail</b>", roles: ["coach"] });
    const from = { fromDay: "2020-01-01", untilDay: null, who: "Ada", recordedAt: NOW, kind: "own" } as const;
    insertCharge(db, { id: userId, studentId, coachId: userId, ...from });
  }
  await people.add({ userId: "dove", name: "Dove", roles: ["director"] });
});
afterAll(() => people.remove());

function viewerOf(userId: string, studentId: string): StudentViewer {
  const viewer = people.viewer(userId);
  const student = admitToStudent(viewer, studentId);
  if (!student) throw new Error(`${userId} can't see ${studentId}`);
  return { ...viewer, student };
}

const whoIn = (viewer: StudentViewer) => loadLooked(viewer, undefined).people.facts.map(({ name }) => name);

it("a merged record shows who looked at either; whoever had the one in charge has the other, until it is undone", () => {
  const { db } = people;
  const [robin, wagtail] = [viewerOf("robin", "one"), viewerOf("wagtail", "two")];
  noteLooks(robin, [robin.student], "/students/[studentId]");
  noteLooks(wagtail, [wagtail.student], "/students/[studentId]/report");
  expect(whoIn(robin)).toEqual(["Robin, coach"]);
  expect(() => viewerOf("wagtail", "one")).toThrow("can't see");
  const dove = viewerOf("dove", "two");
  const note = { who: "Dove", why: "the same", now: "2031-03-02T10:00:00.000Z" };
  const merged = mergeStudents(db, { from: dove.student, to: robin.student }, [], note);
  expect(whoIn(viewerOf("wagtail", "one"))).toEqual(["<b>Wagtail</b>, coach", "Robin, coach"]);
  const id = merged.kind === "merged" ? merged.changeId : 0;
  expect(updateChangeUndone(db, robin.student, id, note).kind).toBe("undone");
  expect(whoIn(robin)).toEqual(["Robin, coach"]);
  expect(() => viewerOf("wagtail", "one")).toThrow("can't see");
});

it("the page is text whatever somebody is called, has one heading of the first rank and leads on to the others", async () => {
  const two = viewerOf("wagtail", "two");
  const markup = renderToStaticMarkup(createElement(Looked, { model: loadLooked(two, "1") }));
  expect(markup.match(/<h1>/g)).toHaveLength(1);
  expect(markup).not.toMatch(/<(b|i)>/);
  expect(markup).toContain("&lt;b&gt;Wagtail&lt;/b&gt;");
  expect(markup).toContain("for paper: season report");
  const pages = ["family", "consent", "take-out", "handing-over", "erase"];
  for (const page of pages) expect(markup).toContain(`href="/students/two/${page}"`);
  const links = (await loadTakeOut(two)).parts.at(-1)?.links.map(({ href }) => href);
  expect(links).toContain("/students/two/looked");
});
