import { randomUUID } from "node:crypto";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { dayIn, endOfDay } from "@/app/_server/clock";
import type { StudentViewer } from "@/app/_server/gate";
import { loadKnown } from "@/app/_server/season/load-known";
import { loadCorrectForm, saveCorrection } from "@/app/_server/session/correct-desk";
import { RecordPage } from "@/app/_ui/record-page/record-page";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { admitFilmed, sent } from "./corrected-season";
import { startAcademy } from "./own-academy-data";
import { enterFilm, filmDays } from "./reread-season";

let mine: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  const { viewer, remove: end } = await startAcademy();
  remove = end;
  mine = await admitFilmed(viewer, "Zephyrine");
});
afterAll(() => remove());

/** Cells of the first table of a part. */
const cells = (page: Awaited<ReturnType<typeof loadKnown>>, part: number) =>
  page.parts[part]?.tables[0]?.rows.map((row) => row.cells) ?? [];

describe("the end of a day", () => {
  it("is the last instant that is still that day, in zones far ahead and behind and on days of 23 and 25 hours", () => {
    for (const zone of ["UTC", "Pacific/Kiritimati", "Pacific/Pago_Pago", "Europe/Vienna", "America/St_Johns"])
      for (const day of ["2026-03-29", "2026-10-25", "2026-03-08", "2026-11-01", "2026-12-31"]) {
        const end = endOfDay(zone, day);
        expect([zone, dayIn(zone, new Date(end))]).toEqual([zone, day]);
        expect(dayIn(zone, new Date(Date.parse(end) + 1))).toBe(dayFromNumber(dayNumber(day) + 1));
      }
    expect(endOfDay("UTC", "2026-03-29")).toBe("2026-03-29T23:59:59.999Z");
  });
});

describe("what was known on a day", () => {
  it("is what is said now as long as nothing was entered late or corrected", async () => {
    const on = filmDays(mine)[4] ?? "";
    const page = await loadKnown(mine, { on });
    const [row] = cells(page, 0);
    expect(row?.[1]).toBe(row?.[2]);
    expect(row?.[1]).toMatch(/5 sessions/);
    expect(row?.[3]).toMatch(/8 sessions/);
    expect(cells(page, 1)).toEqual([]);
    expect(page.parts[1]?.paragraphs[0]).toMatch(/^3 sessions were filmed after/);
  });

  it("leaves out a late film and shows a corrected value as it stood, with who and why", async () => {
    const days = filmDays(mine);
    const form = loadCorrectForm(mine, "film1", randomUUID());
    if (!form) throw new Error("no form");
    await saveCorrection(mine, "film1", sent(form, { "r.1.hinge": "60", why: "wrong still" }));
    const day = dayFromNumber(dayNumber(days[1] ?? "") + 3);
    const film = { id: "late", day, reference: null, now: new Date().toISOString() };
    enterFilm(mine, mine.student, film, [85, 86, 87]);
    const page = await loadKnown(mine, { on: days[4] ?? "", fundamental: "hinge" });
    const [row] = cells(page, 0);
    expect(row?.[1]).toMatch(/5 sessions/);
    expect(row?.[2]).toMatch(/6 sessions/);
    expect(row?.[1]).not.toBe(row?.[2]);
    const why = cells(page, 1);
    expect(why).toHaveLength(2);
    expect(why[0]?.slice(1)).toEqual([
      "Swing 1, Wrist hinge",
      "81.1°",
      "60°",
      expect.stringMatching(/^Coach Lark, .*: wrong still$/),
    ]);
    expect(why[1]?.slice(1)).toEqual([
      "A session that wasn’t on file then",
      "not on file",
      "3 readings",
      "entered later",
    ]);
    const today = await loadKnown(mine, { on: mine.today });
    expect(cells(today, 1)).toEqual([]);
    expect(cells(today, 0)[0]?.[1]).toBe(cells(today, 0)[0]?.[3]);
  });

  it("answers any day: before the first film nothing, a day that isn't one or lies ahead as today; it writes nothing", async () => {
    const changes = mine.db.sqlite.prepare<[], number>("SELECT total_changes()").pluck();
    const before = changes.get();
    const early = await loadKnown(mine, { on: "2001-01-01" });
    expect(cells(early, 0)[0]?.[1]).toBe("nothing measured");
    for (const on of ["9999-12-31", "2026-02-30", "<b>", ""])
      expect((await loadKnown(mine, { on, club: "nothing", fundamental: "nothing" })).ask?.value).toBe(mine.today);
    const markup = renderToStaticMarkup(createElement(RecordPage, { model: early, action: "" }));
    expect(markup).toContain('type="date"');
    expect(changes.get()).toBe(before);
  });
});
