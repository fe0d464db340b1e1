import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadComparedDrills } from "@/app/_server/drill/load-compared";
import type { Viewer } from "@/app/_server/gate";
import { ComparedDrills } from "@/app/_ui/compare/compared-drills";
import { readComparedAssignments } from "@/db/read/compared";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import { compareDrills } from "@/lib/drills/compare-drills";
import { POLICY } from "@/lib/verdict/policy";
import { wordsFor } from "@/lib/words/catalogue";
import { sayEffect } from "@/lib/words/say-comparison";
import { ACADEMIES, drawAcademy } from "../../calibration/drills-population";
import { startAcademy } from "./own-academy-data";

const SWAY = BUILT_IN.find(({ id }) => id === "hip-sway");
let viewer: Viewer;
let remove: () => void;
/** What lies in the file, as the batch door would be handed it. */
let tracks: readonly ComparedTrack[];

/** A simulated academy as rows of the file: what was judged of it, and the drills with their practice. */
function fill({ db, academy }: Viewer): readonly ComparedTrack[] {
  const { sqlite } = db;
  const drawn = drawAcademy(ACADEMIES[0] as (typeof ACADEMIES)[number], 7);
  const put = {
    student: sqlite.prepare(
      "INSERT INTO student (id, academy_id, alias, birth_year, hand, zone, clubs, revision, created_at) VALUES (?, ?, ?, 2010, 'left', 'UTC', '', 1, '')",
    ),
    analysis: sqlite.prepare(
      "INSERT INTO analysis (academy_id, student_id, fundamental_id, club_group, as_of, policy_version, noise_model, data_revision, summary, body) VALUES (?, ?, 'hip-sway', 'iron', '', ?, '', 1, '{}', ?)",
    ),
    drill: sqlite.prepare(
      "INSERT OR IGNORE INTO drill (id, academy_id, name, fundamental_id, how, cautions) VALUES (?, ?, ?, 'hip-sway', '', '')",
    ),
    given: sqlite.prepare(
      "INSERT INTO drill_assignment (id, student_id, drill_id, fundamental_id, start_day, end_day, dose, voided_at) VALUES (?, ?, ?, 'hip-sway', ?, ?, '', ?)",
    ),
    waiting: sqlite.prepare(
      "INSERT INTO waiting (id, student_id, fundamental_id, from_day, until_day, who, recorded_at) VALUES (?, ?, 'hip-sway', ?, ?, '', '')",
    ),
    practice: sqlite.prepare(
      "INSERT INTO practice (id, student_id, day, assignment_id, minutes, source, who, recorded_at) VALUES (?, ?, ?, ?, 10, 'told', '', '')",
    ),
  };
  const today = Number(viewer.today.slice(0, 4));
  return sqlite.transaction(() =>
    drawn.map(({ drills, waiting = [], coach: _coach, ...track }, at) => {
      const { student, ageYears: _age, handedness: _hand, ...judged } = track;
      put.student.run(student, academy.id, `Student ${at}`);
      put.analysis.run(academy.id, student, POLICY.version, JSON.stringify({ track: judged, verdict: {} }));
      const given = drills.map((each, place) => {
        const id = `${student}-${place}`;
        put.drill.run(each.drill, academy.id, each.drill);
        put.given.run(id, student, each.drill, each.start, each.end ?? null, null);
        if (at % 2 === 0) put.practice.run(`${id}-p`, student, each.start, id);
        const dose = at % 2 === 0 ? { dose: { minutes: 10, days: 1 } } : {};
        return { drill: each.drill, start: each.start, ...(each.end ? { end: each.end } : {}), ...dose };
      });
      for (const [place, { from, to }] of waiting.entries()) put.waiting.run(`${student}-w${place}`, student, from, to);
      return {
        ...judged,
        student,
        waiting,
        coach: "",
        ageYears: today - 2010,
        handedness: "left" as const,
        drills: given,
      };
    }),
  )();
}

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  tracks = fill(viewer);
});
afterAll(() => remove());

describe("the page that compares the drills of an academy", () => {
  it("bears the figures that the batch door has of the same tracks", async () => {
    const expected = compareDrills(tracks, POLICY);
    expect(expected.drills.filter(({ effect }) => effect !== null).length).toBeGreaterThan(3);
    const page = await loadComparedDrills(viewer, { for: "hip-sway" });
    const rows = page.evidence?.table.rows.map(({ cells }) => cells) ?? [];
    expect(rows.map(([drill]) => drill)).toEqual(expected.drills.map(({ drill }) => drill));
    for (const [at, { effect, students }] of expected.drills.entries()) {
      const drawn = page.evidence?.drawn[at]?.effect ?? null;
      expect(drawn === null).toBe(effect === null);
      expect(drawn?.value ?? 0).toBeCloseTo(effect?.estimate ?? 0, 9);
      expect(drawn?.low ?? 0).toBeCloseTo(effect?.low95 ?? 0, 9);
      if (students >= 5) expect(rows[at]?.[2]).toBe(String(students));
      if (effect !== null && SWAY) expect(rows[at]?.[1]).toContain(sayEffect(wordsFor("en"), SWAY, effect).size);
    }
    expect(page.lede).toContain(`${tracks.length} students are measured`);
    expect(page.proved?.texts[0]).toContain("left waiting on purpose");
    expect(page.proved?.items).toHaveLength(expected.drills.filter(({ says }) => says === "works").length);
  });

  it("is for which drills were given to most, unless another fundamental is asked for", async () => {
    expect((await loadComparedDrills(viewer, {})).title).toMatch(/^Hip sway/);
    expect((await loadComparedDrills(viewer, { for: "hinge" })).title).toMatch(/no drill was given yet$/);
    await expect(loadComparedDrills(viewer, { for: "nothing" })).rejects.toThrow("NEXT_HTTP_ERROR_FALLBACK;404");
  });

  it("a drill that was taken back was given to nobody; another coach's students aren't among them", () => {
    const all = readComparedAssignments(viewer.db, viewer.scope, "hip-sway");
    const [one] = all;
    expect(one).toMatchObject({ minutes: expect.toSatisfy((minutes) => minutes === 10 || minutes === null) });
    const of = (studentId: string) => ({ ...viewer.scope, students: [studentId] });
    const own = readComparedAssignments(viewer.db, of(one?.studentId ?? ""), "hip-sway");
    expect(new Set(own.map(({ studentId }) => studentId))).toEqual(new Set([one?.studentId]));
    const { sqlite } = viewer.db;
    sqlite.prepare("UPDATE drill_assignment SET voided_at = 'x' WHERE student_id = ?").run(one?.studentId);
    expect(readComparedAssignments(viewer.db, of(one?.studentId ?? ""), "hip-sway")).toEqual([]);
    sqlite.prepare("UPDATE drill_assignment SET voided_at = NULL").run();
  });

  it("with too few marked as waiting nothing is said to work", async () => {
    viewer.db.sqlite.exec("UPDATE waiting SET voided_at = 'x'");
    const page = await loadComparedDrills(viewer, { for: "hip-sway" });
    expect(page.proved?.items).toEqual([]);
    expect(page.proved?.texts[0]).toContain("No drill recorded isn’t the same as no drill");
    viewer.db.sqlite.exec("UPDATE waiting SET voided_at = NULL");
  });

  it("shows what it says, each drawing in words as well, and no student by name", async () => {
    const page = await loadComparedDrills(viewer, { for: "hip-sway" });
    const markup = renderToStaticMarkup(createElement(ComparedDrills, { model: page }));
    for (const { sentence } of page.evidence?.drawn ?? []) expect(markup).toContain(sentence);
    expect(markup).toContain("This is no ranking");
    expect(markup).not.toContain("Student 0");
  });

  describe("cut to a group", () => {
    const right = () => tracks.filter((_, at) => at % 2 === 1);
    const page = (of: string) => loadComparedDrills(viewer, { for: "hip-sway", of });
    beforeAll(() => {
      const put = viewer.db.sqlite.prepare("UPDATE student SET hand = 'right' WHERE id = ?");
      for (const { student } of right()) put.run(student);
    });
    afterAll(() => void viewer.db.sqlite.exec("UPDATE student SET hand = 'left'"));

    it("compares its students alone, and asks as many times more of a drill as there are groups", async () => {
      const shown = await page("hand-right");
      const groups = (shown.filter?.field.options?.length ?? 0) - 1;
      expect(groups).toBeGreaterThanOrEqual(2);
      const expected = compareDrills(
        right().map((track) => ({ ...track, handedness: "right" as const })),
        POLICY,
        groups,
      );
      const effects = new Map(expected.drills.map(({ drill, effect }) => [drill, effect?.estimate ?? 0]));
      const rows = shown.evidence?.table.rows ?? [];
      expect(rows.length).toBeGreaterThan(0);
      for (const [at, { cells }] of rows.entries())
        expect(shown.evidence?.drawn[at]?.effect?.value ?? 0).toBeCloseTo(effects.get(cells[0] ?? "") ?? Number.NaN, 9);
      expect(shown.lede).toContain(`${right().length} students are measured`);
      expect(shown.filter?.state).toMatch(/^\d+ students of whom it is measured: Plays: right-handed$/);
      expect(shown.filter?.note).toContain(`There are ${groups} to choose from`);
      expect(shown.filter?.kept).toContainEqual({ name: "for", value: "hip-sway" });
      expect(shown.filter?.all?.href).toMatch(/^\/drills\?for=hip-sway/);
    });

    it("tells no drill by which one to four students would be known, here or by taking away", async () => {
      const shown = await page("hand-right");
      const had = (of: readonly ComparedTrack[], drill: string | undefined): number =>
        of.filter(({ drills }) => drills.some((each) => each.drill === drill)).length;
      const named = shown.evidence?.table.rows.map(({ cells }) => cells[0]) ?? [];
      for (const drill of named)
        for (const count of [had(right(), drill), had(tracks, drill) - had(right(), drill)])
          expect(count === 0 || count >= 5, `${drill}: ${count}`).toBe(true);
      const all = new Set(tracks.flatMap(({ drills }) => drills.map(({ drill }) => drill)));
      const left = [...all].filter((drill) => had(right(), drill) > 0 && !named.includes(drill)).length;
      if (left > 0) expect(shown.filter?.note).toContain("left out");
    });

    it("a group that isn't offered is everybody", async () => {
      expect((await page("hand-none")).lede).toBe((await page("")).lede);
      expect((await page("hand-none")).filter?.all).toBeNull();
    });
  });
});
