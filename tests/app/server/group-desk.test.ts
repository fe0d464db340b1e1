import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { admitToStudent } from "@/app/_server/gate";
import { loadGridSource } from "@/app/_server/session/grid-desk";
import { addGroup, findGroupDraft } from "@/app/_server/session/group-desk";
import { groupNotices, groupNoticesOf } from "@/app/_server/session/group-jumps";
import { loadGroupPage, loadSavedGroup } from "@/app/_server/session/load-group";
import { answerDraftNote, answerSessionNote, groupNote } from "@/app/_server/session/note-desk";
import { readGroupSessions } from "@/db/read/group-sessions";
import { readCaptures, readSessions } from "@/db/read/sessions";
import { insertSession } from "@/db/write/sessions";
import { insertStudent } from "@/db/write/students";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { NOTHING_SEEN } from "@/lib/domain/session";
import { normal, randomFrom } from "@/seed/random";
import { ON_PAPER, startAcademy } from "./own-academy-data";

let academy: Awaited<ReturnType<typeof startAcademy>>;
let viewer: Viewer;
const NAMES = ["Bo", "Cleo", "Dot", "Eli", "Finn"];
const WITHOUT = "Gus";
/** Level of each fundamental, and what a degree of yaw does to it. */
const FACE_ON = { hinge: [84, 0.7], "setup-tilt": [5, 0.7], "impact-tilt": [12, 0.7], "hip-sway": [3, 0] } as const;
const GROUP = "00000000-0000-4000-8000-000000000001";
const stamp = () => ({ now: "2026-01-01T00:00:00.000Z", newId: crypto.randomUUID.bind(crypto), batchId: null });
const random = randomFrom(1, 77);

function scopeOf(name: string) {
  const scope = admitToStudent(viewer, name);
  if (!scope) throw new Error(`no student ${name}`);
  return scope;
}

function valuesOf(yaw: number): Readonly<Record<string, number>> {
  return Object.fromEntries(
    Object.entries(FACE_ON).map(([id, [level, byYaw]]) => [
      id,
      Math.round(10 * (level + byYaw * yaw + 1.5 * normal(random))) / 10,
    ]),
  );
}

/** Five square films a week apart. */
function film(name: string): void {
  for (let week = 0; week < 5; week++)
    insertSession(
      viewer.db,
      scopeOf(name),
      {
        day: dayFromNumber(dayNumber("2026-02-01") + 7 * week),
        sequence: null,
        clubGroup: "iron",
        club: null,
        reader: "Coach Lark",
        circumstance: "unaided",
        aid: null,
        stanceWidthCm: null,
        daysSincePractice: null,
        marks: [],
        note: null,
        solid: null,
        balls: null,
        setAsideReason: null,
        captures: [
          {
            view: "face-on",
            placement: "anew",
            placementLabel: null,
            squareness: "square",
            offBy: null,
            seen: NOTHING_SEEN,
            placedBy: null,
            setAsideReason: null,
            filmReference: null,
          },
        ],
        statedCaptureSds: [],
        swings: [1, 2, 3, 4].map((number) => ({
          number,
          note: null,
          readings: Object.entries(valuesOf(0)).map(([fundamentalId, value]) => ({
            fundamentalId: fundamentalId as "hinge",
            value,
            typed: `${value}`,
            unit: fundamentalId === "hip-sway" ? "pctStance" : "deg",
            signRule: "neutral" as const,
          })),
        })),
      },
      stamp(),
    );
}

beforeAll(async () => {
  academy = await startAcademy();
  viewer = academy.viewer;
  for (const name of [...NAMES, WITHOUT]) {
    const student = { id: name, alias: name, birthYear: 2012, hand: "right", zone: "UTC", clubs: "" } as const;
    insertStudent(viewer.db, viewer.scope, student, name === WITHOUT ? null : ON_PAPER, stamp());
  }
  for (const name of NAMES) film(name);
});
afterAll(() => academy.remove());

function groupForm(names: readonly string[], change: Readonly<Record<string, string>> = {}, yaw = 0): FormData {
  const data = new FormData();
  data.set("students", names.join(","));
  data.set("draft", GROUP);
  data.set("day", "2026-03-20");
  data.set("clubGroup", "iron");
  data.set("squareness.face-on", "square");
  for (const name of names)
    for (let swing = 1; swing <= 4; swing++)
      for (const [id, value] of Object.entries(valuesOf(yaw))) data.set(`r.@${name}.${swing}.${id}`, `${value}`);
  for (const [name, value] of Object.entries(change)) data.set(name, value);
  return data;
}

describe("a group session", () => {
  it("is refused whole when one value can't be read, and everything typed is kept", async () => {
    const data = groupForm(NAMES, { "r.@Eli.1.hinge": "eighty", "s.Bo.note": "2 thin" });
    const outcome = await addGroup(viewer, data);
    if (outcome.kind !== "refused") throw new Error("taken");
    expect(readGroupSessions(viewer.db, viewer.scope)).toEqual([]);
    const draft = findGroupDraft(viewer, outcome.draftId);
    expect(draft?.errors["r.@Eli.1.hinge"]).toMatch(/not a number/);
    const typed = [...data].filter(([name]) => name !== "draft").map(([name, value]) => [name, String(value)] as const);
    expect(new Map(draft?.entries)).toEqual(new Map(typed));
    const step = await loadGroupPage(viewer, { draft: outcome.draftId });
    if (step.kind !== "form") throw new Error("the choice again");
    const part = step.form.parts.find((each) => each.margin === "Bo");
    expect(part?.fields.find((each) => each.name === "s.Bo.note")?.value).toBe("2 thin");
    expect(step.form.hidden.find((each) => each.name === "draft")?.value).toBe(GROUP);
  });

  it("names students without consent, and leaves them out only after the coach says so", async () => {
    const step = await loadGroupPage(viewer, { student: [...NAMES, WITHOUT], draft: crypto.randomUUID() });
    if (step.kind !== "form") throw new Error("the choice again");
    expect(step.form.parts[0]?.fields[0]?.label).toBe("No consent to measure: Gus");
    expect(step.form.parts.some((part) => part.margin === WITHOUT)).toBe(false);
    const refused = await addGroup(viewer, groupForm([...NAMES, WITHOUT]));
    if (refused.kind !== "refused") throw new Error("taken");
    expect(Object.keys(findGroupDraft(viewer, refused.draftId)?.errors ?? {})).toEqual(["leaveOut"]);
    expect(readGroupSessions(viewer.db, viewer.scope)).toEqual([]);
  });

  it("of nobody who may be measured goes back to the choice", async () => {
    for (const student of [undefined, WITHOUT, "nobody"])
      expect((await loadGroupPage(viewer, { student })).kind).toBe("choose");
  });

  it("shows first what matters now for any of them with those clubs, in the order of work, each one's own marked", async () => {
    const grids = async (group: string, column: readonly string[] = []) => {
      const step = await loadGroupPage(viewer, { student: ["Bo", "New"], group, column, draft: crypto.randomUUID() });
      if (step.kind !== "form") throw new Error("the choice again");
      const of = (name: string) => step.form.parts.find((part) => part.margin === name)?.grid;
      const ids = (name: string) => of(name)?.columns.map((each) => each.fundamentalId) ?? [];
      const marked = (name: string) =>
        of(name)
          ?.columns.filter((each) => each.mark !== "")
          .map((each) => [each.fundamentalId, each.mark]);
      return { of, ids, marked };
    };
    const fresh = { id: "New", alias: "New", birthYear: 2012, hand: "right", zone: "UTC", clubs: "" } as const;
    insertStudent(viewer.db, viewer.scope, fresh, ON_PAPER, stamp());
    const bo = admitToStudent(viewer, "Bo");
    if (!bo) throw new Error("no Bo");
    const own = (await loadGridSource({ ...viewer, student: bo }, "iron")).first;
    const iron = await grids("iron");
    const first = iron.ids("Bo").slice(0, iron.of("Bo")?.first);
    expect(iron.ids("New")).toEqual(iron.ids("Bo"));
    expect(first).toEqual(BUILT_IN.map((each) => each.id).filter((id) => first.includes(id)));
    expect(first[0]).toBe("trail-v");
    for (const id of own) expect(first).toContain(id);
    expect(iron.marked("Bo")).toEqual(first.filter((id) => own.includes(id)).map((id) => [id, "now, Bo"]));
    expect(iron.marked("New")?.map(([id]) => id)).not.toEqual(iron.marked("Bo")?.map(([id]) => id));
    expect([iron.of("Bo")?.rest?.open, iron.of("New")?.rest?.open]).toEqual(["no", "yes"]);
    expect((await grids("driver")).of("Bo")?.rest?.open).toBe("yes");
    const wished = await grids("iron", ["hinge", "foot-line"]);
    expect(wished.ids("Bo")).toEqual(["foot-line", "hinge"]);
    expect(wished.of("Bo")?.rest).toBeNull();
  });

  it("is saved as a session each with one group id and one placement; sent twice it is saved once", async () => {
    const data = groupForm([...NAMES, WITHOUT], { leaveOut: "yes" }, 9);
    expect(await addGroup(viewer, data)).toEqual({ kind: "added", groupId: GROUP });
    expect(await addGroup(viewer, data)).toEqual({ kind: "added", groupId: GROUP });
    const filed = readGroupSessions(viewer.db, viewer.scope);
    expect(filed.map((each) => each.alias)).toEqual(NAMES);
    const labels = NAMES.map((name) => readCaptures(viewer.db, scopeOf(name)).at(-1)?.placementLabel);
    expect(new Set(labels)).toEqual(new Set(["group 2026-03-20 00000000"]));
    expect(readSessions(viewer.db, scopeOf(WITHOUT))).toEqual([]);
  });

  it("with the phone nine degrees off is named as the camera, on the saved page and on each student's", () => {
    const [notice] = groupNotices(viewer, GROUP);
    expect(notice).toMatch(/all 5 students .* moved together, .* too far toward the target/);
    expect(notice).toMatch(/changes no verdict by itself/);
    const [phone, group] = loadSavedGroup(viewer, GROUP).parts;
    expect(phone?.paragraphs).toEqual([notice]);
    expect(phone?.links).toHaveLength(5);
    expect(group?.links.map((link) => link.label)).toEqual([...NAMES, "Record another group session"]);
    expect(group?.links[0]?.href).toMatch(/^\/students\/Bo\/sessions\/[^/]+\/saved$/);
    const sessions = readSessions(viewer.db, scopeOf("Eli"));
    expect(groupNoticesOf(viewer, sessions, "face-on")).toEqual([notice]);
    expect(groupNoticesOf(viewer, sessions, "down-the-line")).toEqual([]);
    expect(groupNoticesOf(viewer, sessions.slice(0, 3), "face-on")).toEqual([]);
  });

  it("a count corrected in one student's note is kept with that student's session alone", async () => {
    const id = "00000000-0000-4000-8000-000000000002";
    const counted = JSON.stringify([{ place: "1 2 thin", coding: { as: "count", count: 1, of: "as-read" } }]);
    const notes = { "s.Bo.note": "2 thin", "s.Bo.counted": counted, "s.Cleo.note": "2 thin" };
    const data = groupForm(["Bo", "Cleo"], { ...notes, draft: id, day: "2026-03-27" });
    const draft = {
      entries: [...data].map(([name, value]) => [name, String(value)] as const),
      errors: {},
      refusal: "",
    };
    const saying = (name: string) =>
      answerDraftNote(viewer, draft, groupNote(name)).sentences.flatMap(({ rows }) => rows.map((row) => row.said));
    expect([saying("Bo"), saying("Cleo")]).toEqual([
      ["1, thin or topped (corrected in this note)"],
      ["2, thin or topped"],
    ]);
    expect(await addGroup(viewer, data)).toEqual({ kind: "added", groupId: id });
    const filed = (name: string) => {
      const session = readSessions(viewer.db, scopeOf(name)).at(-1);
      if (!session) throw new Error("not saved");
      const answer = answerSessionNote({ ...viewer, student: scopeOf(name) }, session);
      return answer?.sentences.flatMap(({ rows }) => rows.map((row) => row.said));
    };
    expect([filed("Bo"), filed("Cleo")]).toEqual([
      ["1, thin or topped (corrected in this note)"],
      ["2, thin or topped"],
    ]);
  });

  it("an unknown group lists those there are", () => {
    const links = loadSavedGroup(viewer, "none").parts[0]?.links.map((link) => link.href);
    expect(links).toContain(`/record/group/saved?group=${GROUP}`);
  });
});
