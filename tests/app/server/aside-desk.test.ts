import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { StudentViewer } from "@/app/_server/gate";
import { loadAsideForm, saveAside } from "@/app/_server/session/aside-desk";
import { loadSessionPage, undoChange } from "@/app/_server/session/load-history";
import { asidePart, loadAsideDone, loadAsideRest } from "@/app/_server/session/load-set-aside";
import { readRecordChanges } from "@/db/read/record-changes";
import type { FormModel } from "@/lib/report/form-model";
import { admitFilmed, filmOf, formOf, sent, usedFilms } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

let mine: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  const { viewer, remove: end } = await startAcademy();
  remove = end;
  mine = await admitFilmed(viewer, "Zephyrine");
});
afterAll(() => remove());

function form(draftId: string = randomUUID()): FormModel {
  const model = loadAsideForm(mine, "film3", draftId, { of: "hinge" });
  if (!model) throw new Error("no form");
  return model;
}
const fieldOf = (name: string) => form().parts[0]?.fields.find((field) => field.name === name);
const onFile = () => filmOf(mine, "film3");
const used = () => usedFilms(mine);

describe("setting a session aside and bringing it back", () => {
  it("needs a reason and a choice; nothing is written", async () => {
    const before = onFile();
    const outcome = await saveAside(mine, "film3", sent(form(), { what: "aside:moon", why: "" }));
    if (outcome.kind !== "refused") throw new Error(outcome.kind);
    const errors = form(outcome.draftId).parts[0]?.fields.filter((field) => field.error !== "");
    expect(errors?.map((field) => field.name)).toEqual(["what", "why"]);
    expect(onFile()).toEqual(before);
  });

  it("set aside with a reason it counts no more, all else stays; the history says who, why and what", async () => {
    const before = onFile();
    expect(await used()).toBe(8);
    expect(await saveAside(mine, "film3", sent(form(), { why: "rain on the lens" }))).toEqual({
      kind: "saved",
      part: "session",
    });
    expect(await used()).toBe(7);
    expect(onFile()).toEqual({ ...before, session: { ...before.session, setAsideReason: "rain on the lens" } });
    expect(
      readRecordChanges(mine.db, mine.student).at(-1) ?? readRecordChanges(mine.db, mine.student)[0],
    ).toMatchObject({ kind: "session-facts", who: mine.name, why: "rain on the lens", sessionId: "film3" });
    const done = await loadAsideDone(mine, "film3", "session", "hinge");
    expect(done?.title).toMatch(/^Set aside: the whole session of Zephyrine/);
    expect(done?.lede).toMatch(/Reason: rain on the lens/);
    // That it isn't judged is what was said: only verdicts that say something new have a line.
    expect(done?.changed.lines.map((line) => line.text).join(" ")).not.toMatch(/isn’t judged here/);
    expect(`${done?.changed.heading} ${done?.changed.unchanged}`).toMatch(/Nothing said|As before|say something new/);
    expect(done?.back.href).toMatch(/\/hinge\?club=/);
  });

  it("brought back with a reason it counts again; the form proposes it, and the history undoes it", async () => {
    expect(fieldOf("what")?.value).toBe("back:session");
    expect(fieldOf("what")?.options[0]?.label).toMatch(/Bring back the whole session \(set aside: rain on the lens\)/);
    expect((await saveAside(mine, "film3", sent(form(), { why: "the lens was dry" }))).kind).toBe("saved");
    expect(await used()).toBe(8);
    expect(onFile().session?.setAsideReason).toBeNull();
    const undo = loadSessionPage(mine, "film3", undefined)?.parts.flatMap((part) => part.presses)[0];
    const pressed = Object.fromEntries(undo?.hidden.map(({ name, value }) => [name, value]) ?? []);
    expect(await undoChange(mine, formOf(pressed))).toBe("undo-undone");
    expect(onFile().session?.setAsideReason).toBe("rain on the lens");
    await saveAside(mine, "film3", sent(form(), { why: "dry all the same" }));
  });

  it("one film alone: its own view’s fundamentals lose it", async () => {
    const view = onFile().films[0]?.view ?? "";
    const saved = await saveAside(mine, "film3", sent(form(), { what: `aside:${view}`, why: "dark" }));
    expect(saved).toEqual({ kind: "saved", part: view });
    expect(onFile().films[0]?.setAsideReason).toBe("dark");
    expect(onFile().session?.setAsideReason).toBeNull();
    expect((await loadAsideRest(mine, "film3", "hinge")).heading).toMatch(/set aside: dark/);
    expect((await loadAsideDone(mine, "film3", asidePart(view), undefined))?.title).toMatch(/^Set aside: the film/);
    await saveAside(mine, "film3", sent(form(), { what: `back:${view}`, why: "bright" }));
    expect(await used()).toBe(8);
  });

  it("who saw it as it was before is told, and sets nothing twice", async () => {
    const [one, two] = [form(), form()];
    expect((await saveAside(mine, "film3", sent(one, { why: "rain" }))).kind).toBe("saved");
    const late = await saveAside(mine, "film3", sent(two, { why: "rain again" }));
    if (late.kind !== "refused") throw new Error(late.kind);
    expect(form(late.draftId).refusal).toMatch(/somebody changed this session/);
    expect(onFile().session?.setAsideReason).toBe("rain");
  });

  it("sent twice it is saved once", async () => {
    const draft = randomUUID();
    const data = () => sent(form(draft), { what: "back:session", why: "once" });
    const first = data();
    const count = () => readRecordChanges(mine.db, mine.student).length;
    const before = count();
    expect((await saveAside(mine, "film3", first)).kind).toBe("saved");
    expect((await saveAside(mine, "film3", first)).kind).toBe("saved");
    expect(count()).toBe(before + 1);
  });

  it("there is no form of a session that isn’t the student’s, and what an address makes up is the session", async () => {
    expect(loadAsideForm(mine, "film99", randomUUID())).toBeNull();
    expect(await loadAsideDone(mine, "film99", "session", undefined)).toBeNull();
    expect(asidePart("../x")).toBe("session");
    expect((await loadAsideRest(mine, "film3", "no-such")).heading).toMatch(/as it is on file/);
  });
});
