import { readFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findRow, opensPage } from "@/app/_server/access/find-row";
import { MATRIX, mayPass, type RowKey } from "@/app/_server/access/matrix";
import { loadUnfinishedPart } from "@/app/_server/draft/unfinished";
import { admitToStudent, firstPage, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { confirmImport } from "@/app/_server/import/write-import";
import { loadFrame } from "@/app/_server/load-frame";
import { giveStudents } from "@/app/_server/people/charge-desk";
import { addGroup } from "@/app/_server/session/group-desk";
import { loadFilmingCard } from "@/app/_server/session/load-filming";
import { loadRecordPage, loadSessionForm } from "@/app/_server/session/load-forms";
import { loadGroupPage, loadSavedGroup } from "@/app/_server/session/load-group";
import { loadSaved } from "@/app/_server/session/load-saved";
import { loadSavedFor } from "@/app/_server/session/load-saved-for";
import { loadReadingSheet } from "@/app/_server/session/load-sheet";
import { addSession } from "@/app/_server/session/session-desk";
import { loadSettings } from "@/app/_server/settings/load-settings";
import { readGroupSessions } from "@/db/read/group-sessions";
import { readReadingsInForce } from "@/db/read/readings";
import { readStudents } from "@/db/read/students";
import { formOf } from "./first-student";
import { addTo, form } from "./inviting";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";

const ROOT = path.join(import.meta.dirname, "../../..");
/** Values of a coach that are in no other number of a page. */
const UNMISTAKABLE = ["71.37", "68.19", "73.91"];
const GROUP = "00000000-0000-4000-8000-000000000001";
const DRAFT = "0f0f0f0f-0f0f-4f0f-8f0f-0f0f0f0f0f0f";

let academy: PeopleAcademy;
let ada: Viewer;
let ed: StudentViewer;
let sessionId: string;

function admitted(viewer: Viewer, studentId: string): StudentViewer {
  const student = admitToStudent(viewer, studentId);
  if (!student) throw new Error("the student is not theirs");
  return { ...viewer, student };
}

beforeAll(async () => {
  academy = await startPeopleAcademy();
  ada = academy.viewer(academy.ownerId);
  await confirmImport(ada, {
    fileName: "season-long.csv",
    file: readFileSync(path.join(ROOT, "seed/samples/season-long.csv")).toString("base64"),
    answers: [
      ["answer:student:nia", "new-right"],
      ["answer-givenBy:student:nia", "herself"],
    ],
  });
  const nia = readStudents(ada.db, ada.scope)[0]?.id ?? "";
  addTo(ada, "Tove");
  await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
  await academy.add({ userId: "ed", name: "Ed", roles: ["assistant"], assists: ["bo"] });
  giveStudents(ada, form({ students: [nia], coach: "bo" }));
  ed = admitted(academy.viewer("ed"), nia);
  const coach = admitted(academy.viewer("bo"), nia);
  const cells = Object.fromEntries(UNMISTAKABLE.map((value, at) => [`r.${at + 1}.hinge`, value]));
  const day = { day: "2026-08-20", clubGroup: "iron", circumstance: "unaided" };
  if ((await addSession(coach, formOf({ ...day, ...cells }))).kind !== "added") throw new Error("it was refused");
  const fields = { day: "2026-09-01", clubGroup: "iron", circumstance: "unaided" };
  const added = await addSession(
    ed,
    formOf({ ...fields, "r.1.hinge": "66", "r.2.hinge": "120", "r.1.setup-tilt": "9" }),
  );
  if (added.kind !== "added") throw new Error("the session was refused");
  sessionId = added.sessionId;
  const group = { students: nia, draft: GROUP, day: "2026-09-02", clubGroup: "iron", "squareness.face-on": "square" };
  const saved = await addGroup(ed, formOf({ ...group, [`r.@${nia}.1.hinge`]: "66", [`r.@${nia}.2.hinge`]: "67" }));
  if (saved.kind === "refused") throw new Error("the group was refused");
});
afterAll(() => academy.remove());

/** All that an assistant is shown, by the row of the page. A page without an entry fails, so that no new one goes unseen. */
async function pagesOfAssistant(): Promise<Readonly<Record<string, unknown>>> {
  return {
    "/filming": loadFilmingCard(ed, {}),
    "/record": [loadRecordPage(ed), loadUnfinishedPart(ed)],
    "/record/group": await loadGroupPage(ed, { student: ed.student.studentId, draft: DRAFT }),
    "/record/group/saved": [
      loadSavedGroup(ed, undefined),
      loadSavedGroup(ed, readGroupSessions(ed.db, ed.scope)[0]?.groupId),
    ],
    "/students/[studentId]/sessions/[sessionId]/saved": await loadSavedFor(ed, sessionId),
    "/students/[studentId]/sessions/new": await loadSessionForm(ed, DRAFT),
    "/students/[studentId]/sessions/sheet": await loadReadingSheet(ed, {}),
    "/settings": await loadSettings(ed, { draft: DRAFT }),
  };
}

/** Every address in a model, wherever it stands. */
function addressesIn(model: unknown): readonly string[] {
  return [...JSON.stringify(model).matchAll(/"(?:href|back|sheet)":"(\/[^"]*)"/g)].map((match) => match[1] ?? "");
}

describe("an assistant, who enters values and reads no report", () => {
  it("is told that it was saved and how many readings, where a coach is told what it shows", async () => {
    const bare = await loadSavedFor(ed, sessionId);
    expect(bare.changed.heading).toBe("Saved, 3 readings");
    expect([bare.changed.lines, bare.check]).toEqual([[], null]);
    const coach = admitted(academy.viewer("bo"), ed.student.studentId);
    expect(await loadSavedFor(coach, sessionId)).toEqual(await loadSaved(coach, sessionId));
  });

  it("after a group is told who was saved, and nothing of whether they moved together", () => {
    const margins = (viewer: Viewer) => {
      const [group] = readGroupSessions(viewer.db, viewer.scope);
      return loadSavedGroup(viewer, group?.groupId).parts.map((part) => part.margin);
    };
    const [bare, full] = [margins(ed), margins(academy.viewer("bo"))];
    expect([bare.length, full.length]).toEqual([1, 2]);
    expect(full).toContain(bare[0]);
  });

  it("is listed the students of the coaches whom they help, and no others", () => {
    const page = JSON.stringify(loadRecordPage(ed));
    expect(page).toContain("Nia");
    expect(page).not.toContain("Tove");
  });

  it("each page of theirs is looked at here", async () => {
    const theirs = (Object.keys(MATRIX) as RowKey[]).filter((row) => {
      return !row.includes(" ") && "roles" in MATRIX[row] && mayPass(row, ["assistant"]);
    });
    const looked = Object.keys(await pagesOfAssistant());
    expect(theirs.filter((row) => !looked.includes(row))).toEqual([]);
  });

  it("no page of theirs leads to one that isn't", async () => {
    const pages = { ...(await pagesOfAssistant()), frame: loadFrame(ed) };
    const dead = Object.entries(pages).flatMap(([page, model]) =>
      addressesIn(model)
        .map((address) => address.split(/[?#]/)[0] ?? "")
        .filter((address) => !(address === "/" || opensPage(address, ed.roles)))
        // A place where there is no row at all would be a slip of this test.
        .map((address) => `${page} → ${address} (${findRow("GET", address)})`),
    );
    expect(dead).toEqual([]);
    expect(firstPage(ed)).toBe("/record");
  });

  it("no page of theirs bears a value that was read of a student before, or what is said of one", async () => {
    const values = readReadingsInForce(ed.db, ed.student).map((each) => String(Math.abs(each.value ?? 0)));
    const earlier = [...UNMISTAKABLE].filter((value) => values.includes(value));
    expect(earlier).toEqual(UNMISTAKABLE);
    const pages = await pagesOfAssistant();
    for (const [page, model] of Object.entries(pages)) {
      const text = JSON.stringify(model);
      const shown = earlier.filter((value) =>
        new RegExp(`(?<![\\d.])${value.replace(".", "\\.")}(?![\\d.])`).test(text),
      );
      // The drawings of the filming card are of nobody.
      if (page !== "/filming") expect([page, shown]).toEqual([page, []]);
      expect([page, /Real gain|Real slip|Not settled|Holding/.exec(text)?.[0]]).toEqual([page, undefined]);
    }
  });
});
