import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { sheetOf, tellLetter } from "@/app/_server/family/letter-desk";
import { loadLetter } from "@/app/_server/family/load-letter";
import { loadTell } from "@/app/_server/family/load-tell";
import { loadTelling } from "@/app/_server/family/load-telling";
import { keepTold, moveToldBack } from "@/app/_server/family/tell-desk";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { addStudent } from "@/app/_server/season/student-desk";
import { loadAsideForm, saveAside } from "@/app/_server/session/aside-desk";
import { readTold } from "@/db/read/told";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { TellPage } from "@/lib/report/tell-model";
import { sent } from "./corrected-season";
import { share } from "./family-academy";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { enterFilm } from "./reread-season";

let viewer: Viewer;
let remove: () => void;
const dot = (): StudentViewer => firstStudent(viewer);
const sentence = "is better than";

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const who = { hand: "right", birthYear: String(Number(viewer.today.slice(0, 4)) - 12), clubs: "", zone: "UTC" };
  await addStudent(viewer, formOf({ alias: "Dot", ...who, consentGivenBy: "a parent", consentOnPaper: "yes" }));
  // Six films far outside the band and eight well inside: as large a change as any.
  for (let at = 0; at < 14; at += 1) {
    const day = dayFromNumber(dayNumber(viewer.today) - 150 + 10 * at);
    const level = at < 6 ? 60 : 95;
    const film = { id: `film${at}`, day, reference: null, now: new Date().toISOString() };
    enterFilm(viewer, dot().student, film, [level, level + 1, level - 1, level + 2, level - 2]);
  }
});
afterAll(() => remove());

const press = (page: TellPage, part: "message" | "file"): FormData => formOf(page[part]?.keep.hidden ?? {});

describe("telling the family", () => {
  it("without a consent to share nothing is offered, kept or made, and the page says so", async () => {
    const page = await loadTell(dot(), undefined);
    expect([page.message, page.file, page.letter]).toEqual([null, null, null]);
    expect(page.refused?.links[0]?.href).toMatch(/\/consent$/);
    const { page: letter, form } = await loadLetter(dot(), { draft: randomUUID() });
    expect([letter.sheet, letter.copy, form]).toEqual([null, null, null]);
    expect(letter.refused).not.toBeNull();
    expect(await keepTold(dot(), formOf({ kind: "message", shown: "x" }))).toBe("no-consent");
    expect((await tellLetter(dot(), formOf({ own: "Hello." }))).kind).toBe("refused");
    expect(readTold(viewer.db, dot().student)).toEqual([]);
  });

  it("looking and copying keep nothing; one press keeps the very text that was shown, once, with the change that it tells", async () => {
    share(dot());
    const page = await loadTell(dot(), undefined);
    const text = page.message?.message.text ?? "";
    expect(text).toMatch(/^Dot: /);
    expect(text).toContain(sentence);
    expect(text.length).toBeLessThanOrEqual(600);
    expect(readTold(viewer.db, dot().student)).toEqual([]);
    expect(await keepTold(dot(), formOf({ ...page.message?.keep.hidden, shown: "another" }))).toBe("changed");
    expect(await keepTold(dot(), press(page, "message"))).toBe("kept");
    expect(await keepTold(dot(), press(page, "message"))).toBe("kept-before");
    const [told, ...more] = readTold(viewer.db, dot().student);
    expect(more).toEqual([]);
    expect(told).toMatchObject({ kind: "message", text, day: viewer.today, who: viewer.name, voidedAt: null });
    expect(told?.findings).toMatchObject([{ fundamentalId: "hinge", kind: "changed", said: "better" }]);
    const list = (await loadTell(dot(), "kept")).told;
    expect(list?.entries.map((entry) => entry.text)).toEqual([text]);
  });

  it("what was not sent after all is taken back, and put back", async () => {
    const entry = (await loadTell(dot(), undefined)).told?.entries[0];
    expect(moveToldBack(dot(), formOf(entry?.press.hidden ?? {}))).toBe("taken-back");
    expect(moveToldBack(dot(), formOf(entry?.press.hidden ?? {}))).toBe("unchanged");
    const taken = (await loadTell(dot(), "taken-back")).told?.entries[0];
    expect(taken?.state).toContain("not sent");
    expect(moveToldBack(dot(), formOf(taken?.press.hidden ?? {}))).toBe("put-back");
    expect(moveToldBack(dot(), formOf({ toldId: "t9", wish: "take" }))).toBe("unchanged");
  });

  it("the file’s words are kept as sent", async () => {
    const page = await loadTell(dot(), undefined);
    expect(await keepTold(dot(), press(page, "file"))).toBe("kept");
    const file = readTold(viewer.db, dot().student).at(-1);
    expect(file?.kind).toBe("file");
    expect(file?.text).toContain(sentence);
    expect(file?.findings).toMatchObject([{ kind: "changed", said: "better" }]);
    expect(await keepTold(dot(), formOf({ kind: "letter", shown: "" }))).toBe("unchanged");
  });

  it("a letter leaves sentences out and orders them, bears the coach’s own paragraph as theirs, and tells what stands in it", async () => {
    const shown = (await loadLetter(dot(), { draft: randomUUID() })).form;
    const hidden = Object.fromEntries((shown?.hidden ?? []).map(({ name, value }) => [name, value]));
    const fields = shown?.parts[0]?.fields.map(({ name }) => name) ?? [];
    expect(fields).toEqual(expect.arrayContaining(["own", "ownPlace", "place.good", "place.changed-1", "place.task"]));
    const typed = { shown: hidden.shown ?? "", own: "She listens well.\r\n\r\nMore next year.", ownPlace: "first" };
    const refused = await tellLetter(dot(), formOf({ ...typed, shown: "before" }));
    if (refused.kind !== "refused") throw new Error("kept over a change");
    expect((await loadLetter(dot(), { draft: refused.draftId })).form?.refusal).toContain("has changed");
    const long = await tellLetter(dot(), formOf({ ...typed, own: "a".repeat(1201), "place.task": "99" }));
    if (long.kind !== "refused") throw new Error("kept");
    const errors = (await loadLetter(dot(), { draft: long.draftId })).form?.parts[0]?.fields;
    expect(errors?.filter(({ error }) => error !== "").map(({ name }) => name)).toEqual(["own", "place.task"]);
    const choice = { "place.changed-1": "", "place.task": "1", "place.good": "2" };
    expect((await tellLetter(dot(), formOf({ ...typed, ...choice }))).kind).toBe("kept");
    const letter = readTold(viewer.db, dot().student).at(-1);
    expect(letter?.kind).toBe("letter");
    expect(letter?.findings).toEqual([]);
    expect(letter?.text).not.toContain(sentence);
    expect(letter?.text).toContain(`In ${viewer.name}’s own words\nShe listens well.\nMore next year.`);
    const { words, telling } = await loadTelling(dot());
    const at = (text: string): number => letter?.text.indexOf(text) ?? -1;
    expect(at("own words")).toBeLessThan(at(telling.story.task));
    expect(at(telling.story.task)).toBeLessThan(at(telling.story.good));
    const all = sheetOf(dot(), { words, telling, clubGroup: "iron" }, { order: [], own: "", place: "last" });
    expect(all.paragraphs).toEqual([]);
  });

  it("a change that was told and that its films bear out no more is taken back in the next message, file and letter, until it was told", async () => {
    for (const id of ["film6", "film7", "film8", "film9", "film10", "film11", "film12", "film13"]) {
      const form = loadAsideForm(dot(), id, randomUUID(), { of: "hinge" });
      if (form === null) throw new Error(id);
      expect(await saveAside(dot(), id, sent(form, { why: "the phone stood aslant" }))).toMatchObject({
        kind: "saved",
      });
    }
    const page = await loadTell(dot(), undefined);
    const text = page.message?.message.text ?? "";
    expect(text).not.toContain(sentence);
    expect(text).toMatch(/On .* we said that .* was better\. .* so we take that back\./);
    const letter = await loadLetter(dot(), { draft: randomUUID() });
    expect(letter.page.copy?.message.text).toContain("so we take that back.");
    // It can be moved, and not be left out.
    const place = letter.form?.parts[0]?.fields.find(({ name }) => name === "place.changed-1");
    expect(place?.options.some(({ value }) => value === "")).toBe(false);
    expect(await keepTold(dot(), press(page, "message"))).toBe("kept");
    const told = readTold(viewer.db, dot().student).find((each) => each.text === text);
    expect(told?.findings).toEqual([{ fundamentalId: "hinge", kind: "corrected", said: "better", change: null }]);
    // It still stands that day, and is gone two weeks later.
    expect((await loadTell(dot(), undefined)).message?.message.text).toContain("take that back");
    const later = { ...dot(), today: dayFromNumber(dayNumber(viewer.today) + 15) };
    expect((await loadTell(later, undefined)).message?.message.text).not.toContain("take that back");
  });
});
