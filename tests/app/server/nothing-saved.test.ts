import { randomUUID } from "node:crypto";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { keepDraft } from "@/app/_server/draft/keep-draft";
import type { Refused } from "@/app/_server/draft/submit-once";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadKeys, makeKeyFrom } from "@/app/_server/import/load-keys";
import { loadWishForm } from "@/app/_server/reread/load-rereads";
import { drawAgain } from "@/app/_server/reread/reread-desk";
import { giveDrill } from "@/app/_server/season/drill-desk";
import { addEvent } from "@/app/_server/season/event-desk";
import { loadDrillForm } from "@/app/_server/season/load-drills";
import { loadEventForm } from "@/app/_server/season/load-events";
import { loadPractice, logPractice } from "@/app/_server/season/practice-desk";
import { addStudent } from "@/app/_server/season/student-desk";
import { loadAsideForm, saveAside } from "@/app/_server/session/aside-desk";
import { loadCorrectForm, saveCorrection } from "@/app/_server/session/correct-desk";
import { loadFactsForm, saveFacts } from "@/app/_server/session/facts-desk";
import { loadSessionForm, loadStudentForm } from "@/app/_server/session/load-forms";
import { loadMoveForm, saveMove } from "@/app/_server/session/move-desk";
import { addSession } from "@/app/_server/session/session-desk";
import { changeClubs, loadClubForm } from "@/app/_server/settings/club-desk";
import { loadSettingsForm, saveSettings } from "@/app/_server/settings/settings-desk";
import type { FormModel } from "@/lib/report/form-model";
import { formOf, sent } from "./corrected-season";
import { closeDisk, fillDisk, freeDisk, lockDisk, startImpatient } from "./failing-disk";

let viewer: Viewer;
let mine: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, mine, remove } = await startImpatient());
}, 60_000);
afterAll(() => remove());
afterEach(() => freeDisk(viewer));

function open<T>(model: T | null | undefined): T {
  if (model === null || model === undefined) throw new Error("no form");
  return model;
}

interface Case {
  /** The form with what was typed, as it is sent. */
  data(draft: string): Promise<FormData> | FormData;
  save(data: FormData): Promise<object> | object;
  /** The page's model after it came back. */
  load(draft: string): Promise<object> | object;
}

const LONG = "x".repeat(1_000);
const of = (load: (draft: string) => FormModel | Promise<FormModel>, typed: Readonly<Record<string, string>>) => ({
  load,
  data: async (draft: string) => sent(await load(draft), typed),
});
const CASES: Readonly<Record<string, Case>> = {
  session: {
    ...of((id) => loadSessionForm(mine, id), { "r.1.hinge": "88.25", note: LONG }),
    save: (data) => addSession(mine, data),
  },
  correction: {
    ...of((id) => open(loadCorrectForm(mine, "film1", id)), { "r.1.hinge": "80.25", why: "misread" }),
    save: (data) => saveCorrection(mine, "film1", data),
  },
  facts: {
    ...of((id) => open(loadFactsForm(mine, "film2", id)), { note: LONG, why: "forgotten" }),
    save: (data) => saveFacts(mine, "film2", data),
  },
  aside: {
    ...of((id) => open(loadAsideForm(mine, "film3", id)), { why: LONG.slice(0, 200) }),
    save: (data) => saveAside(mine, "film3", data),
  },
  split: {
    ...of((id) => open(loadMoveForm(mine, { kind: "split", sessionId: "film4" }, id)), {
      ...{ swings: "2", clubGroup: "driver", why: "two clubs" },
    }),
    save: (data) => saveMove(mine, { kind: "split", sessionId: "film4" }, data),
  },
  student: {
    ...of((id) => loadStudentForm(viewer, id), {
      ...{ alias: "Yarrow", hand: "left", zone: "UTC", consentGivenBy: "father", consentOnPaper: "yes" },
    }),
    save: (data) => addStudent(viewer, data),
  },
  event: {
    ...of((id) => loadEventForm(mine, id, { kind: "growth" }).form, { heightCm: "151.5" }),
    save: (data) => addEvent(mine, data),
  },
  drill: {
    ...of((id) => loadDrillForm(mine, id, {}), { drill: "new", name: "Freeze", how: LONG, words: "daily" }),
    save: (data) => giveDrill(mine, data),
  },
  practice: {
    load: (draft) => loadPractice(mine, { draft }).form,
    data: (draft) => formOf({ draft, source: "told", felt: "", drill: "", [`minutes.${viewer.today}`]: "23" }),
    save: (data) => logPractice(mine, data),
  },
  draw: {
    ...of(
      (draft) => {
        const wish = loadWishForm(viewer, { draft });
        if (wish.kind !== "form") throw new Error("nobody reads");
        return wish.form;
      },
      { count: "12", fundamental: "hinge", level: "b" },
    ),
    save: (data) => drawAgain(viewer, data),
  },
  clubs: {
    ...of((draft) => open(loadClubForm(viewer, { change: "rename", group: "iron", draft })), { name: "Sticks" }),
    save: (data) => changeClubs(viewer, data),
  },
  key: {
    load: (draft) => loadKeys(viewer, { draft }).make,
    data: (draft) => formOf({ draft, name: "The bay" }),
    save: (data) => makeKeyFrom(viewer, data),
  },
  settings: {
    ...of((id) => loadSettingsForm(viewer, id), { name: "Academy of the bay" }),
    save: (data) => saveSettings(viewer, data),
  },
};
const SAID = {
  busy: /Nothing was saved: another program is writing/,
  full: /Nothing was saved: the disk is full/,
  closed: /Nothing was saved: the disk can’t be written to/,
};

describe("a form that the disk takes nothing of", () => {
  it.each(Object.keys(CASES))(
    "%s, while another program writes: comes back as typed, says so, and is saved afterwards",
    async (name) => {
      const form = open(CASES[name]);
      const draft = randomUUID();
      const data = await form.data(draft);
      const before = viewer.db.sqlite.prepare("SELECT count(*) FROM form_receipt").pluck().get();
      lockDisk();
      expect((await form.save(data)) as Refused).toEqual({ kind: "refused", draftId: draft });
      const shown = JSON.stringify(await form.load(draft));
      for (const [field, value] of data)
        if (typeof value === "string" && value !== "" && !["writer", "version", "turn"].includes(field))
          expect(shown).toContain(JSON.stringify(value).slice(1, -1));
      if (name !== "key") expect(shown).toMatch(SAID.busy);
      expect(shown).toContain('"isOnDisk":"no"');
      expect(viewer.db.sqlite.prepare("SELECT count(*) FROM form_receipt").pluck().get()).toBe(before);
      freeDisk(viewer);
      expect(((await form.save(data)) as Refused).kind).not.toBe("refused");
      expect(JSON.stringify(await form.load(draft))).not.toMatch(SAID.busy);
    },
  );

  it("says that a disk can't be written to, and is saved once it can", async () => {
    const draft = randomUUID();
    const data = sent(await loadSessionForm(mine, draft), { "r.1.hinge": "88.25" });
    closeDisk(viewer);
    expect(await addSession(mine, data)).toEqual({ kind: "refused", draftId: draft });
    expect((await loadSessionForm(mine, draft)).refusal).toMatch(SAID.closed);
    freeDisk(viewer);
    expect(((await addSession(mine, data)) as Refused).kind).not.toBe("refused");
  });

  it("says that a full disk is full, and the next keep puts it on the disk once there is room", async () => {
    const draft = randomUUID();
    const data = sent(await loadSessionForm(mine, draft), { "r.1.hinge": "88.25", note: "y".repeat(100_000) });
    fillDisk(viewer);
    expect(await addSession(mine, data)).toEqual({ kind: "refused", draftId: draft });
    const shown = await loadSessionForm(mine, draft);
    expect(shown.refusal).toMatch(SAID.full);
    expect(JSON.stringify(shown)).toContain("y".repeat(100_000));
    freeDisk(viewer);
    const { studentId } = mine.student;
    const entries = [["note", "y"] as const];
    const window = { writer: "w", turn: 1, version: 0, settles: "" };
    expect(keepDraft(viewer, { draft, form: "session-form", studentId, ...window, entries }).kind).toBe("kept");
    expect((await loadSessionForm(mine, draft)).keep).toMatchObject({ isOnDisk: "yes", version: 1 });
  });

  it("what isn't the disk's fault is no refusal", async () => {
    const broken = { ...mine, words: null } as unknown as StudentViewer;
    await expect(addSession(broken, formOf({ draft: randomUUID() }))).rejects.toThrow(TypeError);
  });
});
