import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadAcademyPage } from "@/app/_server/academy/load-academy";
import { loadSpread } from "@/app/_server/academy/load-spread";
import { loadComparedDrills } from "@/app/_server/drill/load-compared";
import type { Viewer } from "@/app/_server/gate";
import { loadRoster } from "@/app/_server/roster/load-roster";
import { Spread } from "@/app/_ui/spread/spread";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { SpreadPage } from "@/lib/report/spread-model";
import { POLICY } from "@/lib/verdict/policy";
import { startAcademy } from "./own-academy-data";

// Tracks as they are kept, counted by hand: a level is known to ±2, and the band is 85 to 95.

interface Raw {
  readonly student: string;
  readonly club: "iron" | "wood";
  readonly level: number;
  readonly gain: boolean;
}

/** Thirty with irons, each third left-handed; twelve of them with woods too, and four with woods alone. */
const RAW: readonly Raw[] = [
  ...Array.from({ length: 30 }, (_, at) => ({ at, club: "iron" as const })),
  ...Array.from({ length: 16 }, (_, at) => ({ at: at + 18, club: "wood" as const })),
].map(({ at, club }) => ({
  student: `s${String(at).padStart(2, "0")}`,
  club,
  level: 78 + ((at * 5 + (club === "wood" ? 3 : 0)) % 23),
  gain: club === "iron" && at < 8,
}));

const isLeft = (student: string): boolean => Number(student.slice(1)) % 3 === 0;
const inside = ({ level }: Raw): boolean => level - 2 >= 85 && level + 2 <= 95;
const outside = ({ level }: Raw): boolean => level + 2 < 85 || level - 2 > 95;
const edge = (raw: Raw): boolean => !inside(raw) && !outside(raw);
const placesOf = (raw: readonly Raw[]) => [outside, edge, inside].map((is) => String(raw.filter(is).length));

let viewer: Viewer;
let remove: () => void;

function summaryOf({ student, club, level, gain, ...rest }: Raw, today: string): string {
  const day = (back: number): string => dayFromNumber(dayNumber(today) - back);
  const span = { estimate: level, low80: level - 1, high80: level + 1, low95: level - 2, high95: level + 2 };
  const change = {
    ...{ verdict: "gain", moved: null, from: day(40), to: day(30), provedOn: day(20) },
    ...{ shape: "step", set80: null, set95: null, size: span, before: span, after: span },
  };
  const place = [inside, outside, edge].findIndex((is) => is({ student, club, level, gain, ...rest }));
  return JSON.stringify({
    ...{ studentId: student, fundamentalId: "hinge", clubGroup: club, goal: { low: 85, high: 95 } },
    sessions: [{ date: day(60), mean: level, mark: "used" }],
    verdict: {
      ...{ id: `${student} hinge ${club}`, verdict: gain ? "gain" : "open", moved: null, levelNow: span },
      position: ["inside", "outside", "edge"][place],
      ...(gain ? { change, changes: [change] } : { change: null, changes: [] }),
      evidence: { logBayesFactor: 0, directionUp: 0.5, limit: 3, noChange: 0.5, priorChange: 0.2 },
      ...{ settleIfReal: null, settleIfNothing: null, changeBelow: null, setAside: [], trend: null },
      ...{ settle: null, notToldApart: null, watch: null, ownedSince: null, reach: null, bandShare: null },
    },
    listedLooks: [20, 10].map((back) => ({
      ...{ day: dayNumber(today) - back, verdict: gain ? "gain" : "open", logBayesFactor: gain ? 40 : -1 },
      ...{ start: 0, adds: true },
    })),
  });
}

function fill({ db, academy, today }: Viewer): void {
  const put = (sql: string) => db.sqlite.prepare(sql);
  const student = put(
    "INSERT INTO student (id, academy_id, alias, birth_year, hand, zone, clubs, revision, created_at) VALUES (?, ?, ?, NULL, ?, 'UTC', '', 1, '2026-01-01T00:00:00.000Z')",
  );
  const analysis = put(
    "INSERT INTO analysis (academy_id, student_id, fundamental_id, club_group, as_of, policy_version, noise_model, data_revision, summary, body) VALUES (?, ?, 'hinge', ?, '', ?, '', 1, ?, ?)",
  );
  const body = JSON.stringify({ track: { sessions: [], goal: { low: 85, high: 95 } }, verdict: {} });
  db.sqlite.transaction(() => {
    for (const id of new Set(RAW.map((raw) => raw.student)))
      student.run(id, academy.id, `Student ${id}`, isLeft(id) ? "left" : "right");
    for (const raw of RAW) analysis.run(academy.id, raw.student, raw.club, POLICY.version, summaryOf(raw, today), body);
    put("UPDATE academy SET season_start = ?").run(dayFromNumber(dayNumber(today) - 50));
    put(
      "INSERT INTO drill (id, academy_id, name, fundamental_id, how, cautions) VALUES ('d1', ?, 'Half-way stop', 'hinge', '', '')",
    ).run(academy.id);
    const given = put(
      "INSERT INTO drill_assignment (id, student_id, drill_id, fundamental_id, start_day, dose) VALUES (?, ?, 'd1', 'hinge', ?, '')",
    );
    // The stretch of every gain ends 30 days ago: with three it ran by then, with one it came later.
    for (const [id, back] of [
      ["s00", 45],
      ["s01", 35],
      ["s02", 30],
      ["s03", 29],
    ] as const)
      given.run(`g-${id}`, id, dayFromNumber(dayNumber(today) - back));
  })();
}

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  fill(viewer);
});
afterAll(() => remove());

type Counted = NonNullable<SpreadPage["counted"]>;

async function countedOf(of?: string): Promise<Counted & { readonly title: string }> {
  const page = await loadSpread(viewer, "hinge", { of });
  if (!page?.counted) throw new Error("nothing counted");
  return { ...page.counted, title: page.title };
}

const secondCells = (part: { readonly table: Counted["levels"]["table"] }) =>
  part.table?.rows.map(({ cells }) => cells[1]);

describe("one fundamental across the academy", () => {
  it("counts what lies on file: inside, on an edge and outside, a dot a track", async () => {
    const { levels, title } = await countedOf();
    expect(secondCells(levels)).toEqual(placesOf(RAW));
    const [out, , within] = placesOf(RAW);
    expect(title).toBe(`Wrist hinge: ${within} of ${RAW.length} inside their bands, ${out} outside`);
    const dots = levels.chart?.strips.flatMap((strip) => strip.dots) ?? [];
    expect(dots.map(({ at }) => at).sort((a, b) => a - b)).toEqual(RAW.map(({ level }) => level).sort((a, b) => a - b));
    expect(levels.chart?.strips.map((strip) => strip.dots.length)).toEqual([16, 30]);
    const counted = levels.chart?.table.rows.map(({ cells }) => Number(cells.at(-1))) ?? [];
    expect(counted.reduce((sum, each) => sum + each, 0)).toBe(RAW.length);
  });

  it("says the same as the academy's page, whose row leads here", async () => {
    const row = (await loadAcademyPage(viewer, {})).counted?.levels.table?.rows[0];
    const [out, on, within] = placesOf(RAW);
    expect(row).toMatchObject({ cells: ["Wrist hinge", within, on, out], href: "/academy/hinge" });
  });

  it("a number of one group of clubs opens just as many students on the roster", async () => {
    const { groups } = await countedOf();
    const row = groups?.table?.rows.find(({ href }) => href === "/academy/hinge?of=club-wood");
    const woods = RAW.filter(({ club }) => club === "wood");
    const [out = "", on = "", within = ""] = placesOf(woods);
    expect(row?.cells.slice(1)).toEqual(["16", within, on, out, "0"]);
    for (const [at, count] of [within, on, out].entries()) {
      const way = row?.ways?.[at + 2] ?? "";
      const asked = Object.fromEntries(new URL(way, "http://here").searchParams);
      expect(asked).toMatchObject({ fundamental: "hinge", club: "wood" });
      expect((await loadRoster(viewer, asked)).evidence.rows).toHaveLength(Number(count));
    }
  });

  it("counts gains that stand on the list since the season's start, and those without a drill", async () => {
    const { moved, helped } = await countedOf();
    expect(moved.heading).toMatch(/^8 real gains and no slip since /);
    expect(secondCells(moved)).toEqual(["8", "0", "0", "0", String(RAW.length - 8)]);
    expect(helped.texts.at(-1)).toMatch(/^5 of the 8 real gains of this season came about while no drill/);
    viewer.db.sqlite.prepare("UPDATE academy SET season_start = ?").run(viewer.today);
    const later = await loadSpread(
      { ...viewer, academy: { ...viewer.academy, seasonStart: viewer.today } },
      "hinge",
      {},
    );
    expect(later?.counted?.moved.heading).toMatch(/^No real gain and no slip since /);
  });

  it("what helped has the very words of the comparison", async () => {
    const { helped } = await countedOf();
    const compared = await loadComparedDrills(viewer, { for: "hinge" });
    const rows = compared.evidence?.table.rows.map(({ cells, href }) => [cells[0], cells[2], cells[4], href]);
    expect(rows).toHaveLength(1);
    expect(helped.table?.rows.map(({ cells, href }) => [...cells, href])).toEqual(rows);
    expect(helped.heading).toBe(compared.proved?.heading);
    expect(compared.ways.map(({ href }) => href)).toContain("/academy/hinge");
  });

  it("cut to a group it counts that group alone, and its drawing and roster are of it", async () => {
    const { levels, groups, filter } = await countedOf("hand-left");
    const left = RAW.filter(({ student }) => isLeft(student));
    expect(secondCells(levels)).toEqual(placesOf(left));
    expect(groups).toBeNull();
    expect(filter.state).toContain(`${new Set(left.map(({ student }) => student)).size} students`);
    for (const { ways } of levels.table?.rows ?? []) expect(ways?.[1] ?? "hand=left").toContain("hand=left");
    expect(levels.table?.download?.href).toContain("group=hand-left");
    expect((await countedOf("hand-none")).title).toBe((await countedOf()).title);
  });

  it("names nobody", async () => {
    const page = await loadSpread(viewer, "hinge", {});
    if (page === null) throw new Error("no page");
    expect(renderToStaticMarkup(createElement(Spread, { model: page }))).not.toContain("Student s");
  });

  it("there is none of an unknown name; of one that nobody is measured in nothing is counted", async () => {
    expect(await loadSpread(viewer, "nothing", {})).toBeNull();
    expect(await loadSpread(viewer, "hip-sway", {})).toMatchObject({
      title: expect.stringMatching(/fewer than five students are measured$/),
      counted: null,
    });
  });

  it("a group in which fewer than five are measured is not offered, nor one whose others would be", async () => {
    const { filter, levels } = await countedOf();
    const ids = () => filter.field.options?.map(({ value }) => value) ?? [];
    expect(ids()).toEqual(expect.arrayContaining(["hand-left", "club-wood"]));
    viewer.db.sqlite.exec("DELETE FROM analysis WHERE club_group = 'wood' AND student_id > 's21'");
    const after = await countedOf();
    expect(after.filter.field.options?.map(({ value }) => value)).not.toContain("club-wood");
    expect(after.groups?.table?.rows.map(({ href }) => href)).not.toContain("/academy/hinge?of=club-wood");
    // Irons without the four of the woods would give those away by taking away.
    expect(after.levels.chart?.strips.map((strip) => strip.dots.length)).toEqual([34]);
    expect(levels.chart?.strips).toHaveLength(2);
  });

  it("an academy of four is told the academy's own words", async () => {
    viewer.db.sqlite.exec("UPDATE student SET departed_on = '2020-01-01' WHERE id > 's03'");
    const title = (await loadAcademyPage(viewer, {})).title;
    expect(await loadSpread(viewer, "hinge", {})).toMatchObject({ title, counted: null });
  });
});
