import { randomUUID } from "node:crypto";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { loadDraw, loadReaderError, loadRereads, loadWishForm } from "@/app/_server/reread/load-rereads";
import { drawAgain, drawForSecond, saveRereads } from "@/app/_server/reread/reread-desk";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { addStudent } from "@/app/_server/season/student-desk";
import { Form } from "@/app/_ui/form/form";
import { ReaderError } from "@/app/_ui/rereads/reader-error";
import { Rereads } from "@/app/_ui/rereads/rereads";
import { readReaderErrors, readRereadDraws, readRereadItems, readRereadPairs } from "@/db/read/rereads";
import { updateConsentWithdrawn } from "@/db/write/students";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { firstStudent, formOf } from "./first-student";
import { startAcademy } from "./own-academy-data";
import { enterFilm, fillSeason, filmDays, firstValue, SESSIONS } from "./reread-season";

let viewer: Viewer;
let remove: () => void;

const form = formOf;
const student = (): StudentViewer => firstStudent(viewer);
beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  expect(loadWishForm(viewer, { draft: randomUUID() }).kind).toBe("nobody");
  const added = await addStudent(
    viewer,
    form({
      alias: "Zephyrine",
      birthYear: "",
      hand: "right",
      clubs: "",
      zone: "UTC",
      consentGivenBy: "herself",
      consentOnPaper: "yes",
    }),
  );
  if (added.kind !== "added") throw new Error("not added");
  fillSeason(viewer, student().student);
});
afterAll(() => remove());

/** The draw's page as a browser gets it; with everything on it that its address asks for. */
function pageOf(drawId: string, draft: string = randomUUID()): string {
  const page = loadDraw(viewer, drawId, { draft });
  if (page?.kind !== "open") throw new Error(`not open: ${page?.kind}`);
  return renderToStaticMarkup(createElement(Form, { model: page.form, action: "/x" }));
}
/** Everything that would tell a reader what was read, of whom or when. */
function telling(): string[] {
  const days = filmDays(viewer);
  const values = days.flatMap((_, at) => [1, 2, 3].map((swing) => String(firstValue(at, swing))));
  return ["Zephyrine", student().student.studentId, "film0", "film1", ...days, ...values, ".037"];
}
function expectBlind(markup: string): void {
  for (const word of telling()) expect(markup).not.toContain(word);
}

describe("a draw from start to end", () => {
  let drawId = "";

  it("takes 18 of 24: one film has no reference, one was read today; the page tells nothing of what was read", () => {
    const outcome = drawAgain(viewer, form({ fundamental: "hinge", count: "40", level: "b", reader: viewer.name }));
    if (outcome.kind !== "drawn") throw new Error("not drawn");
    drawId = outcome.drawId;
    const items = readRereadItems(viewer.db, viewer.scope, drawId);
    expect(items).toHaveLength(18);
    const markup = pageOf(drawId);
    for (const item of items) expect(markup).toContain(`Film “${item.filmReference}”, swing ${item.swing}<`);
    expect(markup).not.toContain("shelf 6");
    expectBlind(markup);
  });

  it("a second draw meanwhile has nothing left, and says why", () => {
    const outcome = drawAgain(viewer, form({ fundamental: "hinge", count: "5", level: "b", reader: viewer.name }));
    if (outcome.kind !== "refused") throw new Error("drawn");
    const wish = loadWishForm(viewer, { draft: outcome.draftId });
    expect(wish.kind === "form" && wish.form.refusal).toMatch(
      /3 readings can’t be opened.*3 were read less.*18 were read again/,
    );
  });

  it("keeps what is typed, part after part; a bad value comes back and loses none of the good ones", async () => {
    const saved = saveRereads(viewer, drawId, form({ "v.1": "81.5", "v.2": "", "v.3": "n/m" }));
    expect(saved).toEqual({ kind: "saved" });
    expect(readRereadDraws(viewer.db, viewer.scope)[0]?.read).toBe(2);
    const bad = saveRereads(viewer, drawId, form({ "v.4": "8o", "v.5": "83", "v.6": "790", finish: "yes" }));
    if (bad.kind !== "refused") throw new Error("not refused");
    const markup = pageOf(drawId, bad.draftId);
    expect(markup).toContain('value="81.5"');
    expect(markup).toContain('value="8o"');
    expect(markup).toContain("is unusual for this fundamental in anyone");
    expectBlind(markup);
    expect(
      readRereadItems(viewer.db, viewer.scope, drawId)
        .map((item) => item.typed)
        .slice(0, 6),
    ).toEqual(["81.5", null, "n/m", null, "83", null]);
    expect(readRereadDraws(viewer.db, viewer.scope)[0]?.finishedOn).toBeNull();
  });

  it("while it is open its pairs are nowhere: not in the list, not in the results", () => {
    expect(readRereadPairs(viewer.db, viewer.scope)).toEqual([]);
    const results = loadReaderError(viewer, "hinge");
    if (!results) throw new Error("no results");
    expectBlind(renderToStaticMarkup(createElement(ReaderError, { model: results })));
    expectBlind(renderToStaticMarkup(createElement(Rereads, { model: loadRereads(viewer) })));
  });

  it("finished, it measures: what verdicts take counts from tomorrow on, and no verdict of today changes", async () => {
    const before = (await loadStudentVerdicts(student())).tracks.map((track) => track.verdict);
    const items = readRereadItems(viewer.db, viewer.scope, drawId);
    const typed = Object.fromEntries(items.map((item) => [`v.${item.place}`, String(84 + (item.place % 3))]));
    expect(saveRereads(viewer, drawId, form({ ...typed, finish: "yes" }))).toEqual({ kind: "finished" });
    const [fit, ...others] = readReaderErrors(viewer.db, viewer.scope);
    expect(others).toEqual([]);
    expect(fit).toMatchObject({ fundamentalId: "hinge", number: 1, pairs: 18, offsetSd: null });
    expect(fit?.fromDay).toBe(dayFromNumber(dayNumber(viewer.today) + 1));
    const pairs = readRereadPairs(viewer.db, viewer.scope);
    // The words that a blind page must not hold are the ones that were read.
    for (const pair of pairs) expect(telling()).toContain(String(pair.first));
    const squares = pairs.reduce((sum, pair) => sum + (pair.again - pair.first) ** 2, 0);
    expect(fit?.readerSd).toBeCloseTo(Math.sqrt((4 * 1.5 ** 2 + squares / 2) / 22), 10);
    expect((await loadStudentVerdicts(student())).tracks.map((track) => track.verdict)).toEqual(before);
    expect(saveRereads(viewer, drawId, form({ "v.1": "70" })).kind).toBe("not-open");
  });

  it("a film of tomorrow is judged with it, those before with the customary 1.5", async () => {
    const fit = readReaderErrors(viewer.db, viewer.scope)[0];
    const scope = student().student;
    const later = { ...viewer, today: dayFromNumber(dayNumber(viewer.today) + 2) };
    const last = { ...viewer.academy, fixedToday: later.today };
    const film = { id: "film-later", day: later.today, reference: null, now: new Date().toISOString() };
    enterFilm(viewer, scope, film, [85]);
    const [track] = (await loadStudentVerdicts({ ...student(), ...later, academy: last })).tracks;
    expect(track?.history.judged.readerSd).toBe(fit?.readerSd);
    expect(track?.history.judged.sessions.map((session) => session.readerSd)).toEqual([
      ...Array.from({ length: SESSIONS }, () => 1.5),
      undefined,
    ]);
    expect(track?.verdict.errorBudget?.reader).toBe(fit?.readerSd);
  });

  it("a second reader gets the same stills with nothing filled in, once; then the two are compared", async () => {
    expect(drawForSecond(viewer, drawId, form({ reader: viewer.name })).kind).toBe("refused");
    expect(drawForSecond(viewer, "no-such", form({ reader: "Coach Tern" })).kind).toBe("not-there");
    const outcome = drawForSecond(viewer, drawId, form({ reader: "Coach Tern" }));
    if (outcome.kind !== "drawn") throw new Error("not drawn");
    expect(drawForSecond(viewer, drawId, form({ reader: "Coach Tern" })).kind).toBe("refused");
    const markup = pageOf(outcome.drawId);
    expectBlind(markup);
    expect(markup).not.toMatch(/name="v\.\d+" [^>]*value="\d/);
    const items = readRereadItems(viewer.db, viewer.scope, outcome.drawId);
    const typed = Object.fromEntries(items.map((item) => [`v.${item.place}`, String(86 + (item.place % 2))]));
    saveRereads(viewer, outcome.drawId, form({ ...typed, finish: "yes" }));
    const results = loadReaderError(viewer, "hinge");
    expect(results?.two.table?.rows[0]?.cells.slice(0, 2)).toEqual([`${viewer.name} less Coach Tern`, "18"]);
    const fits = readReaderErrors(viewer.db, viewer.scope);
    expect(fits.map((fit) => [fit.number, fit.shared])).toEqual([
      [1, 0],
      [2, 18],
    ]);
    expect(fits[1]?.offsetSd).toBeGreaterThan(0);
    expect(fits[1]?.readerSd).toBe(fits[0]?.readerSd);
  });

  it("of a student without a consent in force nothing is drawn", () => {
    const scope = student().student;
    const wish = () => drawAgain(viewer, form({ fundamental: "hinge", count: "3", level: "a", reader: viewer.name }));
    expect(wish().kind).toBe("drawn");
    const [consent] = viewer.db.sqlite.prepare<[], { id: string }>("SELECT id FROM consent").all();
    updateConsentWithdrawn(viewer.db, scope, { consentId: consent?.id ?? "", withdrawnOn: viewer.today });
    expect(wish().kind).toBe("refused");
  });
});
