import { randomUUID } from "node:crypto";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { keepDraft } from "@/app/_server/draft/keep-draft";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadFundamentalSource } from "@/app/_server/season/load-fundamental";
import { loadReadBack, loadReadBacks } from "@/app/_server/season/load-read-back";
import { dropReadBack, saveReadBack, startReadBack } from "@/app/_server/season/read-back-desk";
import { addStudent } from "@/app/_server/season/student-desk";
import { loadAcademyRules, loadStudentRecord } from "@/app/_server/season/student-record";
import { Form } from "@/app/_ui/form/form";
import { HappenPage } from "@/app/_ui/happen/happen-page";
import { digestTables } from "@/db/digest";
import { readReadBackItems, readReadBacks } from "@/db/read/read-backs";
import { readReadingsInForce } from "@/db/read/readings";
import { buildFundamentalCsv, buildReadingsCsv } from "@/lib/report/build-downloads";
import { buildNotices } from "@/lib/report/build-notices";
import { buildReadingsTable } from "@/lib/report/build-readings-table";
import { trackHistories } from "@/lib/verdict/track-history";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { enterFilm, fillSeason, filmDays, firstValue } from "./reread-season";

let viewer: Viewer;
let remove: () => void;
const MEASURE = "setup-tilt";

const form = formOf;
const student = (): StudentViewer => firstStudent(viewer);
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  const who = { hand: "right", birthYear: "", clubs: "", zone: "UTC", consentGivenBy: "herself" };
  await addStudent(viewer, form({ alias: "Zephyrine", ...who, consentOnPaper: "yes" }));
  fillSeason(viewer, student().student);
  const robin = { ...viewer, name: "Robin" };
  const film = { id: "robins", day: "2020-01-05", reference: "shelf R", now: "2020-01-05T18:00:00.000Z" };
  enterFilm(robin, student().student, film, [70.037]);
});
afterAll(() => remove());

function chosen(sessionIds: readonly string[], more: Readonly<Record<string, string>> = {}): FormData {
  const data = form({ fundamental: MEASURE, reader: viewer.name, ...more });
  for (const id of sessionIds) data.append("films", id);
  return data;
}
function start(data: FormData): string {
  const outcome = startReadBack(student(), data);
  if (outcome.kind !== "started") throw new Error(outcome.kind);
  return outcome.readBackId;
}
/** The page of an open read-back as a browser gets it, with all its address asks for. */
function pageOf(readBackId: string, draftId: string = randomUUID()): string {
  const room = loadReadBack(student(), readBackId, draftId);
  if (room?.kind !== "open") throw new Error("not open");
  return [room.form, room.drop]
    .map((model) => renderToStaticMarkup(createElement(Form, { model, action: "/x" })))
    .join();
}
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
/** Everything that would tell when a film was taken, or what else was read in it. */
function expectBlind(markup: string): void {
  const days = filmDays(viewer);
  const values = days.flatMap((_, at) => [1, 2, 3].map((swing) => String(firstValue(at, swing))));
  const spoken = days.map((day) => `${Number(day.slice(8))} ${MONTHS[Number(day.slice(5, 7)) - 1]}`);
  const ids = days.map((_, at) => `film${at}`);
  for (const word of [...days, ...spoken, ...values, ...ids, ".037", "Zephyrine", "iron"])
    expect(markup).not.toContain(word);
}

describe("earlier films read for a new measure", () => {
  let readBackId = "";

  it("offers the reader's own films that can be opened, and says which can't and why", () => {
    const room = loadReadBacks(student(), { fundamental: MEASURE });
    expect(room.wish?.parts[0]?.fields[0]?.options).toHaveLength(7);
    const page = renderToStaticMarkup(createElement(HappenPage, { model: room.page }));
    expect(page).toMatch(/One film has no reference/);
    expect(page).toMatch(/One session was read by Robin: 5 Jan\. Only Robin’s readings count there/);
    expect(page).not.toContain("shelf");
    expect(room.readers?.links.map(({ label }) => label).sort()).toEqual(["Coach Lark", "Robin"]);
    const down = loadReadBacks(student(), { fundamental: "foot-line" });
    expect(down.wish).toBeNull();
    expect(JSON.stringify(down.page.parts)).toMatch(/not filmed from the side/);
  });

  it("draws the wished swings in random order; neither page nor refused page tells a day, a place in time or a value", async () => {
    readBackId = start(chosen(["film0", "film1", "film2", "film3"], { each: "2" }));
    const items = readReadBackItems(viewer.db, student().student, readBackId);
    expect(items).toHaveLength(8);
    const markup = pageOf(readBackId);
    for (const item of items) expect(markup).toContain(`Film “${item.filmReference}”, swing ${item.swing}<`);
    expectBlind(markup);
    const bad = await saveReadBack(student(), readBackId, form({ "v.1": "7.5", "v.2": "5o", "v.3": "700" }));
    if (bad.kind !== "refused") throw new Error("not refused");
    const again = pageOf(readBackId, bad.draftId);
    expect(again).toContain('value="7.5"');
    expect(again).toContain("unusual for this fundamental in anyone");
    expectBlind(again);
    expect(loadReadBacks(student(), { fundamental: MEASURE }).page.parts[0]?.paragraphs.join(" ")).toMatch(
      /4 films wait in an open read-back already/,
    );
  });

  it("what is typed waits in the draw alone: no reading, no chart, no verdict has it before the end", async () => {
    const before = await digestTables(viewer.db, ["reading", "student"]);
    await saveReadBack(
      student(),
      readBackId,
      form({ "v.1": "7.5", "v.2": "8", "v.3": "8.5", "v.4": "n/m", "v.5": "9" }),
    );
    await saveReadBack(student(), readBackId, form({ "v.5": "" }));
    const typed = readReadBackItems(viewer.db, student().student, readBackId).map((item) => item.typed);
    expect(typed).toEqual(["7.5", "8", "8.5", "n/m", null, null, null, null]);
    expect(await digestTables(viewer.db, ["reading", "student"])).toEqual(before);
    await expect(loadFundamentalSource(student(), MEASURE, undefined)).rejects.toThrow();
  });

  it("keeps what is typed as it is typed, what can't be read too; none of it is in the draw before the button", () => {
    const typed = () => readReadBackItems(viewer.db, student().student, readBackId).map((item) => item.typed);
    const before = typed();
    const draft = randomUUID();
    const { studentId } = student().student;
    const window = { writer: "a", turn: 1, version: 0, settles: "" };
    const entries = [["v.5", "6.5"] as const, ["v.6", "6o"] as const];
    const asked = { form: "read-back-values", studentId, of: readBackId, draft, ...window, entries };
    expect(keepDraft(viewer, asked).kind).toBe("kept");
    const again = pageOf(readBackId, draft);
    expect(again).toContain('value="6.5"');
    expect(again).toContain('value="6o"');
    expectBlind(again);
    expect(typed()).toEqual(before);
  });

  it("at the end everything typed enters at once, with the day of the swing and the day of reading; what was known before stays known so", async () => {
    const { db } = viewer;
    const scope = student().student;
    const rules = loadAcademyRules(db, viewer.scope, viewer.academy);
    const knownAt = new Date(Date.now() - 1).toISOString();
    // What every look of the season rests on, as it was known an instant before the end.
    const looks = (): string => {
      const known = readReadingsInForce(db, scope, { knownAt });
      const record = { ...loadStudentRecord(db, scope, rules), readings: known };
      return JSON.stringify(filmDays(viewer).map((day) => trackHistories(record, day)));
    };
    const before = looks();
    const end = await saveReadBack(student(), readBackId, form({ finish: "yes" }));
    expect(end).toEqual({ kind: "finished", entered: 4, passed: 0 });
    expect(looks()).toBe(before);
    expect(readReadingsInForce(db, scope, { fundamentalId: MEASURE })).toHaveLength(4);
    expect(readReadingsInForce(db, scope, { fundamentalId: MEASURE, knownAt })).toEqual([]);
    const source = await loadFundamentalSource(student(), MEASURE, undefined);
    const films = source.history.sessions.length;
    expect(source.history.sessions.every((entry) => filmDays(viewer).includes(entry.session.day))).toBe(true);
    expect(new Set(source.readBack?.map((each) => each.readOn))).toEqual(new Set([viewer.today]));
    const notice = buildNotices(viewer.words, source).find((line) => line.startsWith("Read back on"));
    expect(notice).toMatch(films === 1 ? /one earlier film\./ : new RegExp(`from ${films} earlier films\\.`));
    const notes = buildReadingsTable(viewer.words, source).rows.map(({ cells }) => cells.at(-1));
    for (const note of notes) expect(note).toMatch(/read on \d+ \w+/);
    expect(buildFundamentalCsv(source).split("\r\n")[1]).toMatch(new RegExp(`${viewer.today}$`));
    const record = loadStudentRecord(db, scope, rules);
    expect(buildReadingsCsv(record).split("\r\n")[0]).toMatch(/,note,read on$/);
    const page = loadReadBack(student(), readBackId, randomUUID());
    expect(page?.kind === "over" && page.page.title).toMatch(/4 readings entered/);
  });

  it("nothing more can be typed then, and a swing read directly meanwhile keeps that reading", async () => {
    expect(await saveReadBack(student(), readBackId, form({ "v.5": "9" }))).toEqual({ kind: "not-open" });
    const second = start(chosen(["film0"]));
    const items = readReadBackItems(viewer.db, student().student, second);
    const empty = await saveReadBack(student(), second, form({ finish: "yes" }));
    expect(empty.kind).toBe("refused");
    viewer.db.sqlite
      .prepare(
        `INSERT INTO reading (student_id, fundamental_id, session_id, swing_id, reader, reread, value, typed, unit, sign_rule, entered_at)
         SELECT ?, ?, 'film0', swing_id, ?, 0, 5, '5', 'deg', 'neutral', '' FROM read_back_item
         WHERE read_back_id = ? AND place = 1`,
      )
      .run(student().student.studentId, MEASURE, viewer.name, second);
    const typed = Object.fromEntries(items.map(({ place }) => [`v.${place}`, "6"]));
    const end = await saveReadBack(student(), second, form({ ...typed, finish: "yes" }));
    expect(end).toEqual({ kind: "finished", entered: items.length - 1, passed: 1 });
  });

  it("given up, nothing of it enters the record and its films are free again", () => {
    const third = start(chosen(["film4"]));
    const before = loadReadBacks(student(), { fundamental: MEASURE }).wish?.parts[0]?.fields[0]?.options.length ?? 0;
    expect(dropReadBack(student(), third)).toBe("dropped");
    expect(dropReadBack(student(), third)).toBe("not-open");
    const after = loadReadBacks(student(), { fundamental: MEASURE }).wish?.parts[0]?.fields[0]?.options.length;
    expect(after).toBe(before + 1);
    const states = readReadBacks(viewer.db, student().student).map(({ finishedAt, droppedAt }) => [
      ...[finishedAt !== null, droppedAt !== null],
    ]);
    expect(states).toContainEqual([false, true]);
  });

  it("another reader's films can't be slipped in, nor a film that can't be opened", () => {
    for (const id of ["robins", "film7", "nothing"]) {
      expect(startReadBack(student(), chosen([id])).kind).toBe("refused");
    }
    expect(startReadBack(student(), chosen(["robins"], { reader: "Robin" })).kind).toBe("started");
    expect(startReadBack(student(), chosen(["film4"], { fundamental: "tilt-kept" })).kind).toBe("not-there");
  });
});
