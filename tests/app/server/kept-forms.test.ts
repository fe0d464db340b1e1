import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { DRAFT_FORMS } from "@/app/_server/draft/draft-forms";
import type { Entries } from "@/app/_server/draft/form-draft";
import { keepDraft } from "@/app/_server/draft/keep-draft";
import { loadUnfinished } from "@/app/_server/draft/unfinished";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadKeys } from "@/app/_server/import/load-keys";
import { loadInviteForm } from "@/app/_server/people/invite-desk";
import { loadAccount } from "@/app/_server/people/load-account";
import { loadPlan } from "@/app/_server/plan/load-plan";
import { loadDraw, loadWishForm } from "@/app/_server/reread/load-rereads";
import { drawAgain, saveRereads } from "@/app/_server/reread/reread-desk";
import { giveDrill } from "@/app/_server/season/drill-desk";
import { addEvent } from "@/app/_server/season/event-desk";
import { loadEvent, loadEventForm } from "@/app/_server/season/load-events";
import { loadPriority } from "@/app/_server/season/load-priority";
import { loadReadBack, loadReadBacks } from "@/app/_server/season/load-read-back";
import { loadPractice } from "@/app/_server/season/practice-desk";
import { startReadBack } from "@/app/_server/season/read-back-desk";
import { loadAsideForm } from "@/app/_server/session/aside-desk";
import { loadCorrectForm } from "@/app/_server/session/correct-desk";
import { loadFactsForm } from "@/app/_server/session/facts-desk";
import { loadSessionForm, loadStudentForm } from "@/app/_server/session/load-forms";
import { loadGroupPage } from "@/app/_server/session/load-group";
import { loadMoveForm } from "@/app/_server/session/move-desk";
import { loadClubForm } from "@/app/_server/settings/club-desk";
import { loadKeepingForm } from "@/app/_server/settings/keeping-desk";
import { loadSettingsForm } from "@/app/_server/settings/settings-desk";
import { insertAccount, insertPerson } from "@/db/write/people";
import type { KeepModel } from "@/lib/report/keep-model";
import { admitFilmed, admitNew, formOf } from "./corrected-season";
import { drillForms } from "./kept-drill-forms";
import { familyForms, fillFamily } from "./kept-family-forms";
import { goalForms } from "./kept-goal-forms";
import { enterAsOwner, startAcademy } from "./own-academy-data";
import { filmDays } from "./reread-season";

interface Model {
  readonly keep?: KeepModel;
  readonly hidden: readonly { readonly name: string; readonly value: string }[];
}

let viewer: Viewer;
let mine: StudentViewer;
let other: StudentViewer;
let remove: () => void;
let made: Readonly<Record<"event" | "drill" | "draw" | "finished" | "readBack", string>>;

/** An id of what a desk has made. */
function idOf(outcome: object, name: string): string {
  const value: unknown = Object.entries(outcome).find(([each]) => each === name)?.[1];
  if (typeof value !== "string") throw new Error(JSON.stringify(outcome));
  return value;
}

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  viewer = await enterAsOwner(viewer);
  insertAccount(viewer.db, {
    ...{ userId: "robin", name: "Robin", email: "robin@range.example", passwordHash: "salt:hash", now: new Date() },
  });
  const added = { addedAt: new Date().toISOString(), addedBy: viewer.name, assists: [] };
  insertPerson(viewer.db, { userId: "robin", academyId: viewer.academy.id, roles: ["coach"], ...added });
  mine = await admitFilmed(viewer, "Zephyrine");
  other = await admitNew(viewer, "Lark", "left");
  const event = await addEvent(mine, formOf({ kind: "growth", day: filmDays(viewer)[4] ?? "", heightCm: "150" }));
  const drill = giveDrill(
    mine,
    formOf({ drill: "new", name: "Freeze", fundamental: "hinge", how: "Stop.", start: viewer.today, words: "daily" }),
  );
  const wish = { fundamental: "hinge", level: "b", reader: viewer.name };
  const draw = drawAgain(viewer, formOf({ ...wish, count: "10" }));
  const short = drawAgain(viewer, formOf({ ...wish, count: "10" }));
  const finished = idOf(short, "drawId");
  saveRereads(viewer, finished, formOf({ "v.1": "81", finish: "yes", confirmUnusual: "yes" }));
  const films = formOf({ fundamental: "trailWrist", reader: viewer.name, each: "1" });
  for (const id of ["film0", "film1"]) films.append("films", id);
  const room = loadReadBacks(mine, { draft: randomUUID() });
  films.set("fundamental", room.wish?.hidden.find(({ name }) => name === "fundamental")?.value ?? "");
  const readBack = startReadBack(mine, films);
  fillFamily(mine);
  made = {
    event: idOf(event, "eventId"),
    drill: idOf(drill, "assignmentId"),
    draw: idOf(draw, "drawId"),
    finished,
    readBack: idOf(readBack, "readBackId"),
  };
}, 60_000);
afterAll(() => remove());

function open<T>(model: T | null | undefined): T {
  if (model === null || model === undefined) throw new Error("no form");
  return model;
}

const logIn = { userId: "nobody", token: "none", hasSecondStep: false, ends: { unused: 0, latest: 0 } };
/** Each form as its page loads it, and what somebody types into it; `n/e` is nothing that could be saved. */
const FORMS: Readonly<Record<string, { load(draft: string): Promise<Model> | Model; readonly typed: Entries }>> = {
  "session-form": { load: (id) => loadSessionForm(mine, id), typed: [["r.1.hinge", "9x"]] },
  "group-form": {
    async load(id) {
      const chosen = { student: [mine.student.studentId, other.student.studentId], swings: "3", draft: id };
      const step = await loadGroupPage(viewer, chosen);
      if (step.kind === "choose") throw new Error("nobody was chosen");
      return step.form;
    },
    typed: [["club", "half a seven"]],
  },
  "correct-form": {
    load: (id) => open(loadCorrectForm(mine, "film1", id)),
    typed: [
      ["r.2.hinge", "81.5"],
      ["why", "misr"],
    ],
  },
  "facts-form": { load: (id) => open(loadFactsForm(mine, "film2", id)), typed: [["note", "half a note"]] },
  "aside-form": { load: (id) => open(loadAsideForm(mine, "film2", id)), typed: [["why", "rain on the l"]] },
  "move-form": {
    load: (id) => open(loadMoveForm(mine, { kind: "move", sessionId: "film3" }, id)),
    typed: [["why", "wrong gi"]],
  },
  "split-form": {
    load: (id) => open(loadMoveForm(mine, { kind: "split", sessionId: "film4" }, id)),
    typed: [
      ["swings", "2"],
      ["why", "two cl"],
    ],
  },
  "merge-form": {
    load: (id) => open(loadMoveForm(mine, { kind: "merge", sessionId: null }, id)),
    typed: [["why", "entered tw"]],
  },
  "priority-form": { load: async (d) => open((await loadPriority(mine, { draft: d })).form), typed: [["reason", "h"]] },
  "student-form": { load: (id) => loadStudentForm(viewer, id), typed: [["alias", "Yar"]] },
  "event-form": {
    load: (id) => loadEventForm(mine, id, { kind: "growth" }).form,
    typed: [
      ["heightCm", "15o"],
      ["kind", "growth"],
    ],
  },
  "rebaseline-form": {
    load: (id) => open(loadEvent(mine, made.event, id)?.rebaseline),
    typed: [
      ["rebaselines", "hinge"],
      ["why", "gre"],
    ],
  },
  "film-plan-form": { load: async (draft) => (await loadPlan(mine, { draft })).form, typed: [["swings", "1o"]] },
  "practice-form": {
    load: (draft) => loadPractice(mine, { draft }).form,
    get typed(): Entries {
      return [[`minutes.${viewer.today}`, "2o"]];
    },
  },
  "read-back-form": { load: (draft) => open(loadReadBacks(mine, { draft }).wish), typed: [["each", "2x"]] },
  "read-back-values": {
    load(id) {
      const room = loadReadBack(mine, made.readBack, id);
      if (room?.kind !== "open") throw new Error("not open");
      return room.form;
    },
    typed: [["v.1", "7,,5"]],
  },
  "reread-wish": {
    load(draft) {
      const wish = loadWishForm(viewer, { draft });
      if (wish.kind !== "form") throw new Error("nobody reads");
      return wish.form;
    },
    typed: [["count", "1x"]],
  },
  "reread-values": {
    load(draft) {
      const page = loadDraw(viewer, made.draw, { draft });
      if (page?.kind !== "open") throw new Error("not open");
      return page.form;
    },
    typed: [["v.2", "8o"]],
  },
  "reread-second": {
    load(draft) {
      const page = loadDraw(viewer, made.finished, { draft });
      if (page?.kind !== "finished") throw new Error("not finished");
      return page.second;
    },
    typed: [["reader", "Coach Wr"]],
  },
  "keeping-form": { load: (id) => loadKeepingForm(viewer, id), typed: [["keepMonths", "1o"]] },
  "club-form": {
    load: (draft) => open(loadClubForm(viewer, { change: "rename", group: "iron", draft })),
    typed: [["name", "Sticks"]],
  },
  "key-form": { load: (draft) => loadKeys(viewer, { draft }).make, typed: [["name", "The ba"]] },
  "invite-form": { load: (id) => loadInviteForm(viewer, id), typed: [["name", "Ro"]] },
  "account-form": {
    load: (draft) => open(loadAccount(viewer, logIn, { draft }).parts[0]?.forms[0]).form,
    typed: [["name", "Coach La"]],
  },
  ...familyForms(() => mine),
  ...goalForms(() => mine),
  ...drillForms(() => ({ viewer: mine, drill: made.drill })),
  settings: { load: (id) => loadSettingsForm(viewer, id), typed: [["name", "Academy of th"]] },
};

describe("every form that is kept", () => {
  it("is tried here", () => {
    expect(Object.keys(FORMS).sort()).toEqual(Object.keys(DRAFT_FORMS).sort());
  });

  it.each(Object.keys(DRAFT_FORMS))(
    "%s: what is half typed stands in the page after a reload, and waits in the list",
    async (name) => {
      const form = FORMS[name];
      if (!form) throw new Error(name);
      const draft = randomUUID();
      const first = await form.load(draft);
      const keep = open(first.keep);
      expect(keep).toMatchObject({ form: name, draft, version: 0 });
      const led = first.hidden.filter((each) => !keep.leading.includes(each.name));
      const entries = [...led.map((each) => [each.name, each.value] as const), ...form.typed];
      const { studentId, of } = keep;
      const asked = { ...{ draft, form: name, studentId, of, entries }, ...{ version: 0, turn: 1, settles: "" } };
      expect(keepDraft(viewer, { ...asked, writer: "w" }).kind).toBe("kept");
      const again = await form.load(draft);
      expect(again.keep?.version).toBe(1);
      const { keep: _keep, ...shown } = again;
      for (const [, value] of form.typed) expect(JSON.stringify(shown)).toContain(JSON.stringify(value).slice(1, -1));
      const listed = open(loadUnfinished(viewer).find((each) => each.id === draft));
      const page = DRAFT_FORMS[name]?.page(keep.studentId, keep.of);
      expect(listed.goOn.href).toBe(`${page}?draft=${draft}`);
      const fresh = await form.load(randomUUID());
      expect(fresh.keep?.unfinished.map(({ id }) => id)).toContain(draft);
    },
  );
});
