import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { bodyOf, type Entries } from "@/app/_server/draft/form-draft";
import { type KeepRequest, keepDraft } from "@/app/_server/draft/keep-draft";
import { loadUnfinished } from "@/app/_server/draft/unfinished";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadCorrectForm, saveCorrection } from "@/app/_server/session/correct-desk";
import { loadMoveForm, saveMove } from "@/app/_server/session/move-desk";
import { loadSettingsForm, saveSettings } from "@/app/_server/settings/settings-desk";
import { readDraft } from "@/db/read/drafts";
import { admitFilmed, admitNew, formOf, sent } from "./corrected-season";
import { startAcademy } from "./own-academy-data";
import { enterFilm } from "./reread-season";

let viewer: Viewer;
let mine: StudentViewer;
let other: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  mine = await admitFilmed(viewer, "Zephyrine");
  other = await admitNew(viewer, "Lark", "left");
}, 60_000);
afterAll(() => remove());

function open<T>(model: T | null | undefined): T {
  if (model === null || model === undefined) throw new Error("no form");
  return model;
}

function request(draft: string, given: Partial<KeepRequest>): KeepRequest {
  const { studentId } = mine.student;
  const standing = { form: "session-form", version: 0, writer: "a", turn: 1, entries: [], settles: "" } as const;
  return { draft, studentId, ...standing, ...given };
}

function contentOf(id: string): Entries {
  return bodyOf(open(readDraft(viewer.db, viewer.scope, id))).entries;
}

describe("a window that goes", () => {
  it("puts what a window that went sent of its changes into what it kept, and never into another window's", () => {
    const id = randomUUID();
    const first: Entries = [
      ["note", "x".repeat(90_000)],
      ["r.1.hinge", "90"],
      ["marks", "a"],
      ["marks", "b"],
    ];
    keepDraft(viewer, request(id, { entries: first }));
    const went = { turn: 2, version: 1, changed: ["r.1.hinge", "marks", "day"] };
    expect(keepDraft(viewer, request(id, { ...went, entries: [["r.1.hinge", "91"]] })).kind).toBe("kept");
    expect(contentOf(id)).toEqual([first[0], ["r.1.hinge", "91"]]);
    keepDraft(viewer, request(id, { turn: 1, entries: first }));
    expect(contentOf(id)).toContainEqual(["r.1.hinge", "91"]);
    const other = request(id, { writer: "b", version: 1, changed: ["r.1.hinge"], entries: [["r.1.hinge", "70"]] });
    expect(keepDraft(viewer, other)).toMatchObject({
      kind: "changed",
      differences: [{ name: "r.1.hinge", here: ["70"], there: ["91"] }],
    });
    expect(contentOf(id)).toContainEqual(["r.1.hinge", "91"]);
    expect(keepDraft(viewer, request(randomUUID(), { changed: ["note"], entries: [["note", "y"]] })).kind).toBe(
      "absent",
    );
  });
});

describe("a form that is kept and sent", () => {
  it("an outdated window saves nothing over a correction; what was in sight of it is no difference to choose about", async () => {
    const draft = randomUUID();
    const form = open(loadCorrectForm(mine, "film1", draft));
    const entries: Entries = [...sent(form, { "r.1.hinge": "80", why: "one" })]
      .filter(([name]) => !open(form.keep).leading.includes(name))
      .map(([name, value]) => [name, String(value)] as const);
    const asked = {
      draft,
      form: "correct-form",
      studentId: mine.student.studentId,
      of: "film1",
      version: 0,
      settles: "",
    };
    keepDraft(viewer, { ...asked, writer: "a", turn: 1, entries });
    const seen = entries.map(([name, value]) => [name, name.startsWith("seen.") ? "elsewhere" : value] as const);
    expect(keepDraft(viewer, { ...asked, writer: "b", turn: 1, entries: seen }).kind).toBe("kept");
    const stale = sent(form, { "r.1.hinge": "79", why: "two" });
    const refused = await saveCorrection(mine, "film1", stale);
    expect(refused).toEqual({ kind: "refused", draftId: draft });
    const both = open(loadCorrectForm(mine, "film1", draft)?.keep?.both);
    expect(both.fields.map((field) => [field.here, field.there])).toEqual(
      expect.arrayContaining([
        ["80", "79"],
        ["one", "two"],
      ]),
    );
    expect(both.fields).toHaveLength(2);
  });

  it("a form about a session that went to another student goes with it", async () => {
    const day = viewer.today;
    enterFilm(viewer, mine.student, { id: "gone", day, reference: null, now: new Date().toISOString() }, [81, 82]);
    const draft = randomUUID();
    const { studentId } = mine.student;
    const asked = { draft, form: "correct-form", studentId, of: "gone", version: 0, writer: "a", turn: 1, settles: "" };
    keepDraft(viewer, { ...asked, entries: [["why", "half"]] });
    const form = open(loadMoveForm(mine, { kind: "move", sessionId: "gone" }, randomUUID()));
    const to = other.student.studentId;
    const moved = await saveMove(
      mine,
      { kind: "move", sessionId: "gone" },
      sent(form, { to, signs: "keep", why: "hers" }),
    );
    expect(moved.kind).toBe("saved");
    const listed = open(loadUnfinished(viewer).find(({ id }) => id === draft));
    expect(listed.goOn.href).toBe(`/students/${to}/sessions/gone/correct?draft=${draft}`);
    expect(JSON.stringify(open(loadCorrectForm(other, "gone", draft)).parts)).toContain('"half"');
  });

  it("settings sent twice are saved once, and sent anew after a change they are refused and kept", () => {
    const draft = randomUUID();
    const fields = { draft, name: "Academy", ownerName: "Coach", zone: "UTC", seasonStart: "" };
    expect(saveSettings(viewer, formOf(fields))).toEqual({ kind: "saved" });
    expect(saveSettings(viewer, formOf(fields))).toEqual({ kind: "saved" });
    const changed = saveSettings(viewer, formOf({ ...fields, name: "Other" }));
    if (changed.kind !== "refused") throw new Error("saved over");
    expect(JSON.stringify(loadSettingsForm(viewer, changed.draftId).parts)).toContain('"Other"');
  });
});
