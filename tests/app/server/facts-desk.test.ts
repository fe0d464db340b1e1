import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { StudentViewer } from "@/app/_server/gate";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { loadFactsForm, saveFacts } from "@/app/_server/session/facts-desk";
import { loadHistory, loadSessionPage, undoChange } from "@/app/_server/session/load-history";
import { readReadingsInForce } from "@/db/read/readings";
import { insertReadings } from "@/db/write/readings";
import type { FormModel } from "@/lib/report/form-model";
import { admitFilmed, filmOf, formOf, sent, usedFilms } from "./corrected-season";
import { startAcademy } from "./own-academy-data";
import { filmDays } from "./reread-season";

let mine: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  const { viewer, remove: end } = await startAcademy();
  remove = end;
  mine = await admitFilmed(viewer, "Zephyrine");
});
afterAll(() => remove());

function form(draftId: string = randomUUID()): FormModel {
  const model = loadFactsForm(mine, "film3", draftId);
  if (!model) throw new Error("no form");
  return model;
}
const readingOf = (value: number) => ({
  fundamentalId: "hinge" as const,
  value,
  typed: `${value}`,
  unit: "deg" as const,
  signRule: "neutral" as const,
});
const onFile = () => filmOf(mine, "film3");
const used = () => usedFilms(mine);

describe("saying a session's facts anew", () => {
  it("sent as it stands it changes nothing, whatever a file has brought that the form can't say", async () => {
    mine.db.sqlite.exec(
      `UPDATE session SET balls = 20, aid = 'towel', note = ' two  blanks ' WHERE id = 'film3';
       UPDATE capture SET placement_label = 'mat 3', off_by = 2.5, pointing_stick_lean = -4.123456789,
         plumb_lean = 1.5, shutter_per_second = 1000.5 WHERE session_id = 'film3'`,
    );
    const before = onFile();
    const outcome = await saveFacts(mine, "film3", sent(form(), { why: "looked again" }));
    expect(outcome.kind).toBe("refused");
    if (outcome.kind === "refused") expect(form(outcome.draftId).refusal).toMatch(/says what is on file already/);
    expect(onFile()).toEqual(before);
    await saveFacts(mine, "film3", sent(form(), { why: "a word", note: "windy" }));
    expect(onFile().films).toEqual(before.films);
    expect(onFile().session).toEqual({ ...before.session, note: "windy" });
  });

  it("a sighting keeps its sign: pointing to the left stays to the left", async () => {
    await saveFacts(mine, "film3", sent(form(), { why: "film found", "film.face-on": "shelf 9" }));
    expect(onFile().films[0]).toMatchObject({
      filmReference: "shelf 9",
      seen: { pointingStickLean: -4.123456789, plumbLean: 1.5 },
    });
  });

  it("needs a reason, a day not ahead and not before birth; nothing is written", async () => {
    const before = onFile();
    for (const day of ["9999-01-01", "1999-01-01", "soon"]) {
      const outcome = await saveFacts(mine, "film3", sent(form(), { day }));
      if (outcome.kind !== "refused") throw new Error(outcome.kind);
      const errors = form(outcome.draftId)
        .parts.flatMap((part) => part.fields)
        .filter((field) => field.error !== "");
      expect(errors.map((field) => field.name)).toEqual(["why", "day"]);
    }
    expect(onFile()).toEqual(before);
  });

  it("set aside it counts no more, brought back it does; a day that another film has takes the next place; all is undone", async () => {
    expect(await used()).toBe(8);
    expect(await saveFacts(mine, "film3", sent(form(), { why: "rain", setAside: "rain on the lens" }))).toEqual({
      kind: "saved",
    });
    expect(await used()).toBe(7);
    expect(await saveFacts(mine, "film3", sent(form(), { why: "it was dry", setAside: "" }))).toEqual({
      kind: "saved",
    });
    expect(await used()).toBe(8);
    const taken = filmDays(mine)[4] ?? "";
    await saveFacts(mine, "film3", sent(form(), { why: "wrong day", day: taken, clubGroup: "iron" }));
    expect(onFile().session).toMatchObject({ day: taken, sequence: 2 });
    const page = loadSessionPage(mine, "film3", undefined);
    const undo = page?.parts.flatMap((part) => part.presses)[0];
    expect(undo?.explains).toMatch(/day: .* → .*day: /);
    const pressed = Object.fromEntries(undo?.hidden.map(({ name, value }) => [name, value]) ?? []);
    expect(await undoChange(mine, formOf(pressed))).toBe("undo-undone");
    expect(onFile().session).toMatchObject({ day: filmDays(mine)[3], sequence: 1 });
    expect(await undoChange(mine, formOf(pressed))).toBe("undo-undone-before");
    const first = loadHistory(mine, undefined).parts[1]?.presses.at(-1);
    const older = Object.fromEntries(first?.hidden.map(({ name, value }) => [name, value]) ?? []);
    expect(await undoChange(mine, formOf(older))).toMatch(/^undo-(undone|no-change)$/);
    for (const changeId of ["", "x", "999999", "1e3"])
      expect(await undoChange(mine, formOf({ changeId }))).toBe("undo-not-there");
  });

  it("who saw older facts is told and overwrites nothing", async () => {
    const [one, two] = [form(), form()];
    await saveFacts(mine, "film3", sent(one, { why: "first", note: "one" }));
    const outcome = await saveFacts(mine, "film3", sent(two, { why: "second", note: "two" }));
    if (outcome.kind !== "refused") throw new Error(outcome.kind);
    expect(onFile().session?.note).toBe("one");
    const back = form(outcome.draftId);
    expect(back.refusal).toMatch(/somebody corrected these facts/);
    expect(await saveFacts(mine, "film3", sent(back, {}))).toEqual({ kind: "saved" });
    expect(onFile().session?.note).toBe("two");
  });

  it("another reader takes the values along, the session is judged anew as theirs, and it is undone", async () => {
    const values = () =>
      readReadingsInForce(mine.db, mine.student)
        .filter((each) => each.sessionId === "film3")
        .map((each) => [each.fundamentalId, each.value]);
    const readers = () =>
      mine.db.sqlite
        .prepare("SELECT DISTINCT reader FROM reading WHERE session_id = 'film3' AND reread = 0")
        .pluck()
        .all();
    const judgedReader = async () => {
      const { tracks } = await loadStudentVerdicts(mine);
      const at = tracks[0]?.history.sessions.findIndex(({ session }) => session.id === "film3") ?? -1;
      return tracks[0]?.judged.track.sessions[at]?.reader;
    };
    const [before, was, judgedBefore] = [values(), onFile().session?.reader, await judgedReader()];
    expect(before.length).toBeGreaterThan(0);
    expect(await saveFacts(mine, "film3", sent(form(), { why: "Wren read it", reader: "Coach Wren" }))).toEqual({
      kind: "saved",
    });
    expect(onFile().session?.reader).toBe("Coach Wren");
    expect(readers()).toEqual(["Coach Wren"]);
    expect(values()).toEqual(before);
    expect(await judgedReader()).not.toBe(judgedBefore);
    const undo = loadSessionPage(mine, "film3", undefined)?.parts.flatMap((part) => part.presses)[0];
    expect(undo?.explains).toContain(`read by: ${was} → `);
    expect(undo?.explains.match(/read by/g)).toHaveLength(2);
    const pressed = formOf(Object.fromEntries(undo?.hidden.map(({ name, value }) => [name, value]) ?? []));
    expect(await undoChange(mine, pressed)).toBe("undo-undone");
    expect([onFile().session?.reader, readers(), values()]).toEqual([was, [was], before]);
    expect(await judgedReader()).toBe(judgedBefore);
  });

  it("a known reader in other letters is that reader; none, or one with values of their own there, is refused", async () => {
    const refused = async (reader: string) => {
      const outcome = await saveFacts(mine, "film3", sent(form(), { why: "x", reader }));
      if (outcome.kind !== "refused") throw new Error(outcome.kind);
      return form(outcome.draftId);
    };
    const was = onFile().session?.reader ?? "";
    expect((await refused(was.toUpperCase())).refusal).toMatch(/says what is on file already/);
    const errorOf = (model: FormModel) =>
      model.parts.flatMap((part) => part.fields).find((field) => field.name === "reader")?.error;
    expect(errorOf(await refused(""))).not.toBe("");
    mine.db.sqlite.exec(
      `INSERT INTO reading (student_id, fundamental_id, session_id, swing_id, reader, reread, value, typed, unit, sign_rule,
         entered_at)
       SELECT student_id, fundamental_id, session_id, swing_id, 'Second', 0, value, typed, unit, sign_rule, entered_at
       FROM reading WHERE session_id = 'film3' AND reread = 0 LIMIT 1`,
    );
    expect(errorOf(await refused("Second"))).toMatch(/values of their own/);
    expect(onFile().session?.reader).toBe(was);
  });

  it("a reader can't be put back once values were added as the new one's", async () => {
    await saveFacts(mine, "film3", sent(form(), { why: "Wren read it", reader: "Coach Wren" }));
    const undo = loadSessionPage(mine, "film3", undefined)?.parts.flatMap((part) => part.presses)[0];
    const added = [{ number: 9, note: null, readings: [readingOf(80)] }];
    insertReadings(
      mine.db,
      mine.student,
      { sessionId: "film3", reader: null, reading: "first", swings: added },
      { now: "2026-03-01T00:00:00.000Z", batchId: null },
    );
    const pressed = formOf(Object.fromEntries(undo?.hidden.map(({ name, value }) => [name, value]) ?? []));
    expect(await undoChange(mine, pressed)).toMatch(/^undo-no-values$/);
    expect(onFile().session?.reader).toBe("Coach Wren");
  });
});
