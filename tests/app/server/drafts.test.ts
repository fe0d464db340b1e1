import { randomUUID } from "node:crypto";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { DRAFT_FORMS, kindOf } from "@/app/_server/draft/draft-forms";

import { bodyOf, type Entries, keepFormDraft } from "@/app/_server/draft/form-draft";
import { type KeepRequest, keepDraft } from "@/app/_server/draft/keep-draft";
import { loadDropped, loadUnfinished, moveDraft } from "@/app/_server/draft/unfinished";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { loadEventForm } from "@/app/_server/season/load-events";
import { addStudent } from "@/app/_server/season/student-desk";
import { addSession } from "@/app/_server/session/session-desk";
import { readDraft } from "@/db/read/drafts";
import { startAcademy } from "./own-academy-data";

let viewer: Viewer;
let coach: StudentViewer;
let remove: () => void;

function formOf(fields: Readonly<Record<string, string>>): FormData {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.append(name, value);
  return data;
}

const STUDENT = { alias: "Ari", hand: "right", zone: "UTC", consentGivenBy: "Ari", consentOnPaper: "yes" };

beforeEach(async () => {
  const started = await startAcademy();
  ({ viewer, remove } = started);
  const added = addStudent(viewer, formOf(STUDENT));
  if (added.kind !== "added") throw new Error("Ari was not added");
  const student = admitToStudent(viewer, added.studentId);
  if (!student) throw new Error("Ari is another academy's");
  coach = { ...viewer, student };
});

afterEach(() => remove());

function request(draft: string, given: Partial<KeepRequest>): KeepRequest {
  const { studentId } = coach.student;
  const standing = { form: "session-form", version: 0, writer: "a", turn: 1, entries: [], settles: "" } as const;
  return { draft, studentId, ...standing, ...given };
}

function contentOf(id: string): Entries {
  const row = readDraft(viewer.db, viewer.scope, id);
  if (!row) throw new Error("there is no such draft");
  return bodyOf(row).entries;
}

const session = { day: "2026-09-01", clubGroup: "iron", circumstance: "unaided", "r.1.hinge": "92" };

describe("keeping a form while somebody types", () => {
  it("keeps the newest of one window, whichever arrives last, and counts versions", () => {
    const id = randomUUID();
    expect(keepDraft(viewer, request(id, { entries: [["note", "one"]] }))).toMatchObject({ kind: "kept", version: 1 });
    const third = request(id, { version: 1, turn: 3, entries: [["note", "three"]] });
    expect(keepDraft(viewer, third)).toMatchObject({ kind: "kept", version: 2 });
    const late = request(id, { version: 1, turn: 2, entries: [["note", "two"]] });
    expect(keepDraft(viewer, late)).toMatchObject({ kind: "kept", version: 2 });
    expect(contentOf(id)).toEqual([["note", "three"]]);
  });

  it("a form that comes back lets no keep through that was late before", () => {
    const id = randomUUID();
    keepDraft(viewer, request(id, { turn: 4, entries: [["note", "four"]] }));
    const fields = { draft: id, writer: "a", turn: "2", note: "refused" };
    expect(keepFormDraft(viewer, kindOf("session-form", coach.student.studentId), formOf(fields), {}, "no")).toBe(id);
    keepDraft(viewer, request(id, { turn: 3, entries: [["note", "three"]] }));
    expect(contentOf(id)).toEqual([["note", "refused"]]);
  });

  it("tells an outdated window both values of each field that differs, and keeps both", () => {
    const id = randomUUID();
    keepDraft(
      viewer,
      request(id, {
        entries: [
          ["note", "wind"],
          ["r.1.hinge", "90"],
        ],
      }),
    );
    const stale = request(id, {
      writer: "b",
      entries: [
        ["note", "rain"],
        ["r.1.hinge", "90"],
      ],
    });
    const told = keepDraft(viewer, stale);
    expect(told).toMatchObject({ kind: "changed", differences: [{ name: "note", here: ["rain"], there: ["wind"] }] });
    expect(contentOf(id)[0]).toEqual(["note", "wind"]);
    const row = readDraft(viewer.db, viewer.scope, id);
    expect(row && bodyOf(row).aside?.[0]?.entries[0]).toEqual(["note", "rain"]);
    if (told.kind !== "changed") return;
    const chosen = { ...stale, turn: 2, version: told.version, settles: told.settles };
    expect(keepDraft(viewer, chosen)).toMatchObject({ kind: "kept" });
    const settled = readDraft(viewer.db, viewer.scope, id);
    expect(settled && bodyOf(settled)).toMatchObject({
      entries: [
        ["note", "rain"],
        ["r.1.hinge", "90"],
      ],
      aside: [],
    });
  });

  it("a retry whose answer was lost, and another window with the very same content, are no change", () => {
    const id = randomUUID();
    const first = request(id, { entries: [["note", "wind"]] });
    keepDraft(viewer, first);
    expect(keepDraft(viewer, first)).toMatchObject({ kind: "kept", version: 1 });
    expect(keepDraft(viewer, { ...first, writer: "b" })).toMatchObject({ kind: "kept", version: 1 });
  });

  it("never takes a draft of another form, nor a form that isn't kept", () => {
    const id = randomUUID();
    keepDraft(viewer, request(id, { entries: [["note", "wind"]] }));
    expect(keepDraft(viewer, request(id, { form: "student-form" })).kind).toBe("absent");
    expect(keepDraft(viewer, request(randomUUID(), { form: "import" })).kind).toBe("absent");
    expect(keepDraft(viewer, request(randomUUID(), { form: "constructor" })).kind).toBe("absent");
  });
});

describe("sending a form", () => {
  const sent = (id: string, fields: Readonly<Record<string, string>> = {}) =>
    formOf({ draft: id, version: "0", writer: "a", turn: "0", ...session, ...fields });

  it("saves once: the same form again has the same answer, and its draft is gone", async () => {
    const id = randomUUID();
    keepDraft(viewer, request(id, { entries: [["day", "2026-09-01"]] }));
    const first = await addSession(coach, sent(id));
    expect(first.kind).toBe("added");
    expect(await addSession(coach, sent(id))).toEqual(first);
    expect(readDraft(viewer.db, viewer.scope, id)).toBeUndefined();
    expect(keepDraft(viewer, request(id, { turn: 9 })).kind).toBe("saved");
    expect(viewer.db.sqlite.prepare("SELECT count(*) FROM session").pluck().get()).toBe(1);
  });

  it("keeps what was changed after saving under an id of its own, and saves nothing over it", async () => {
    const id = randomUUID();
    await addSession(coach, sent(id));
    const changed = await addSession(coach, sent(id, { "r.1.hinge": "71" }));
    if (changed.kind !== "refused") throw new Error("it was saved twice");
    expect(changed.draftId).not.toBe(id);
    expect(contentOf(changed.draftId)).toContainEqual(["r.1.hinge", "71"]);
    expect(viewer.db.sqlite.prepare("SELECT count(*) FROM session").pluck().get()).toBe(1);
  });

  it("refuses an outdated page without scripts, shows both, and saves what was chosen", async () => {
    const id = randomUUID();
    keepDraft(viewer, request(id, { writer: "b", entries: Object.entries({ ...session, note: "from b" }) }));
    const refused = await addSession(coach, sent(id, { note: "from a" }));
    expect(refused).toEqual({ kind: "refused", draftId: id });
    expect(contentOf(id)).toContainEqual(["note", "from b"]);
    const now = (fields: Readonly<Record<string, string>>) =>
      sent(id, {
        version: String(readDraft(viewer.db, viewer.scope, id)?.version),
        writer: "c",
        note: "from b",
        ...fields,
      });
    expect((await addSession(coach, now({}))).kind).toBe("refused");
    const saved = await addSession(coach, now({ "pick.note": "there" }));
    expect(saved.kind).toBe("added");
    expect(viewer.db.sqlite.prepare("SELECT note FROM session").pluck().get()).toBe("from a");
  });

  it("writes session, receipt and the draft's end in one transaction: a failing receipt leaves all three undone", async () => {
    const id = randomUUID();
    keepDraft(viewer, request(id, { entries: Object.entries(session) }));
    viewer.db.sqlite.exec(
      "CREATE TRIGGER no_receipt BEFORE INSERT ON form_receipt BEGIN SELECT RAISE(ABORT, 'no'); END",
    );
    await expect(addSession(coach, sent(id, { version: "1" }))).rejects.toThrow("no");
    expect(viewer.db.sqlite.prepare("SELECT count(*) FROM session").pluck().get()).toBe(0);
    expect(contentOf(id)).toContainEqual(["r.1.hinge", "92"]);
  });

  it("a student's form sent twice makes one student, also where the alias is taken by then", () => {
    const id = randomUUID();
    const form = () => formOf({ ...STUDENT, alias: "Bo", draft: id, version: "0", writer: "a" });
    expect(addStudent(viewer, form())).toEqual(addStudent(viewer, form()));
  });
});

describe("unfinished forms", () => {
  it("are offered, dropped and taken back with all that was typed", () => {
    const id = randomUUID();
    keepDraft(
      viewer,
      request(id, {
        entries: [
          ["day", "2026-11-24"],
          ["r.1.hinge", "92"],
          ["r.2.hinge", "90"],
        ],
      }),
    );
    expect(loadUnfinished(viewer)[0]?.label).toMatch(/^Session of Ari on 24 Nov: 2 values, kept \d\d:\d\d\.$/);
    const before = contentOf(id);
    expect(moveDraft(viewer, id, "dropped")).toBe(`/students/${coach.student.studentId}/sessions/new`);
    expect([loadUnfinished(viewer).length, loadDropped(viewer).length]).toEqual([0, 1]);
    moveDraft(viewer, id, "unfinished");
    expect([loadUnfinished(viewer).length, loadDropped(viewer).length]).toEqual([1, 0]);
    expect(contentOf(id)).toEqual(before);
  });

  it("a window that goes on typing into a dropped form has it back", () => {
    const id = randomUUID();
    keepDraft(viewer, request(id, { entries: [["note", "one"]] }));
    moveDraft(viewer, id, "dropped");
    keepDraft(viewer, request(id, { version: 1, turn: 2, entries: [["note", "two"]] }));
    expect(loadUnfinished(viewer).map((each) => each.id)).toEqual([id]);
  });

  it("of every form are described in words and lead to its page", async () => {
    const { studentId } = coach.student;
    const filmed = await addSession(coach, formOf(session));
    if (filmed.kind !== "added") throw new Error("no session");
    for (const [form, { about, page, of: what }] of Object.entries(DRAFT_FORMS)) {
      const id = randomUUID();
      const whom = about === "student" ? studentId : "";
      const of = what === undefined ? "" : what === "session" ? filmed.sessionId : "x y";
      const asked = request(id, { form, studentId: whom, of, entries: [["day", "2026-11-24"]] });
      expect(keepDraft(viewer, asked).kind).toBe("kept");
      const found = loadUnfinished(viewer).find((each) => each.id === id);
      expect(found?.label).toMatch(/kept \d\d:\d\d\.$/);
      expect(found?.goOn.href).toBe(`${page(studentId, of)}?draft=${id}`);
    }
  });

  it("lead a form with its id, version and window, each page a window of its own", () => {
    const id = randomUUID();
    const [one, other] = [loadEventForm(coach, id, {}).form, loadEventForm(coach, id, {}).form];
    const hidden = Object.fromEntries(one.hidden.map(({ name, value }) => [name, value]));
    expect(hidden).toMatchObject({ draft: id, version: "0", form: "event-form", studentId: coach.student.studentId });
    expect(one.keep?.writer).not.toBe(other.keep?.writer);
    expect(kindOf("event-form", "s1")).toBe("event-form s1");
  });
});
