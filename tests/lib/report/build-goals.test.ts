import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { RecordedBand } from "@/lib/domain/goal-band";
import { buildAllGoals } from "@/lib/report/build-all-goals";
import { buildGoalsPage, type GoalsSource } from "@/lib/report/build-goals";
import { buildOwningPage } from "@/lib/report/build-owning";
import { policyOwning } from "@/lib/verdict/owned-since";
import { POLICY } from "@/lib/verdict/policy";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const hinge = BUILT_IN.find(({ id }) => id === "hinge") as Fundamental;
const TODAY = "2026-09-12";
let count = 0;
const band = (change: Partial<RecordedBand>): RecordedBand => ({
  ...{ id: `b${count++}`, fundamentalId: "hinge", clubGroup: "iron", scope: "student", ageFrom: null, ageTo: null },
  ...{ studentId: "s1", low: 80, high: 100, from: "2026-03-01", reason: "a long arm", who: "Lark" },
  createdAt: "2026-03-01T10:00:00.000Z",
  ...change,
});
const plain = (value: unknown): string => JSON.stringify(value).replace(/[\u00a0\u202f]/g, " ");
const student = { id: "s1", alias: "Ulla", birthYear: 2014, hand: "right", zone: "UTC", clubs: "" } as const;
const page = (over: Partial<GoalsSource>) =>
  buildGoalsPage(words, {
    ...{ student, fundamental: hinge, clubGroup: "iron", clubName: "Irons", bands: [], track: null, today: TODAY },
    dayOf: (instant) => instant.slice(0, 10),
    ...over,
  });
const facts = (over: Partial<GoalsSource>) =>
  page(over).parts[0]?.facts.map(({ name, value, note }) => plain([name, value, note]));

describe("the page of a goal band", () => {
  it("nobody set one: the built-in has always held, and the others are none", () => {
    const model = page({});
    expect(plain(model.title)).toContain("Ulla, Wrist hinge: the goal is 85 to 95°");
    expect(facts({})).toEqual([
      plain(["Built in", "85 to 95°", "holds, from the start"]),
      plain(["The academy", "none of its own", ""]),
      plain(["This student", "none of its own", ""]),
    ]);
    expect(model.parts[1]?.table).toBeNull();
    expect(model.documentTitle).not.toContain("Ulla");
  });

  it("the narrowest holds; a planned one says from when, one given back says so", () => {
    const academy = band({ scope: "academy", studentId: null, low: 82, high: null });
    const own = band({ from: "2026-05-01", low: 70 });
    const planned = band({ from: "2026-10-01", low: 75 });
    expect(facts({ bands: [academy, own, planned] })).toEqual([
      plain(["Built in", "85 to 95°", "from the start"]),
      plain(["The academy", "at least 82°", "since Sun 1 Mar 2026"]),
      plain(["This student", "70 to 100°", "holds, since Fri 1 May 2026"]),
      plain(["This student", "75 to 100°", "from Thu 1 Oct 2026 on"]),
    ]);
    const back = band({ from: "2026-06-01", low: null, high: null, reason: "grown" });
    const after = page({ bands: [academy, own, back] });
    expect(plain(after.title)).toContain("at least 82°");
    expect(after.parts[1]?.table?.rows.map(({ cells, tone }) => [plain(cells[2]), cells[3], tone])).toEqual([
      ['"given back to the wider band"', "grown", "quiet"],
      ['"70 to 100°"', "a long arm", "quiet"],
      ['"at least 82°"', "a long arm", "plain"],
    ]);
  });

  it("one planned and replaced before it began is in the history, and planned no more", () => {
    const slip = band({ from: "2027-10-01", low: 75, replaced: true });
    const bands = [band({ from: "2026-05-01", low: 70 }), slip];
    expect(JSON.stringify(facts({ bands }))).not.toContain("75");
    expect(page({ bands }).parts[1]?.table?.rows[0]?.cells[0]).toBe("Fri 1 Oct 2027; replaced before it began");
    const all = { bands: [{ ...slip, scope: "academy" as const }], fundamentals: BUILT_IN, grouping: SHORT_LIST };
    expect(buildAllGoals(words, { ...all, today: TODAY }).table).toBeNull();
  });

  it("one that was dated back says from when its words count; one from before entries were signed says that", () => {
    const late = band({ decidesFrom: "2026-04-02", createdAt: "2026-04-02T10:00:00.000Z" });
    const rows = page({ bands: [band({ from: "2026-01-01", who: "" }), late] }).parts[1]?.table?.rows;
    expect(rows?.[0]?.cells[0]).toBe("Sun 1 Mar 2026; films before Thu 2 Apr 2026 keep their words");
    expect(rows?.[0]?.cells[4]).toBe("Thu 2 Apr 2026, Lark");
    expect(rows?.[1]?.cells[4]).toBe("before entries were signed");
  });

  it("says what keeps its word under which band, and what became of owning", () => {
    const change = { verdict: "gain", moved: null, provedOn: "2026-05-02" };
    const goals = [
      { from: "0001-01-01", low: 85, high: 95 },
      { from: "2026-06-01", low: 60, high: 70 },
    ];
    const told = (verdict: object): string =>
      plain(
        page({
          track: {
            history: { fundamental: hinge, judged: { goals, goal: goals[1] } },
            verdict: { changes: [change], listed: true, ownedSince: null, ...verdict },
          } as unknown as GoalsSource["track"],
        }).parts[0]?.paragraphs,
      );
    expect(told({})).toContain("Real gain, said on Sat 2 May 2026, was earned under 85 to 95° and stays so.");
    expect(told({})).toContain("Judged anew when the band began, on Mon 1 Jun 2026");
    expect(told({ ownedSince: "2026-06-01" })).toContain("owned under it since Mon 1 Jun 2026");
    expect(told({ listed: false })).not.toContain("Real gain");
  });
});

describe("all bands of an academy", () => {
  it("those that hold or are planned, in the order of work, each with its page; no student’s", () => {
    const bands = [
      band({ scope: "academy", studentId: null, from: "2026-01-01" }),
      band({ scope: "academy", studentId: null, low: 81 }),
      band({ scope: "academy", studentId: null, fundamentalId: "trail-v", low: 10, high: 60 }),
      band({ scope: "age-range", studentId: null, ageFrom: 9, ageTo: 12, low: null, high: null }),
      band({ scope: "age-range", studentId: null, ageFrom: 9, ageTo: 12, from: "2026-12-01" }),
      band({}),
    ];
    const part = buildAllGoals(words, { bands, fundamentals: BUILT_IN, grouping: SHORT_LIST, today: TODAY });
    expect(part.table?.rows.map(({ cells, tone }) => plain([cells[0], cells[2], cells[3], tone]))).toEqual([
      plain(["Trail-hand V", "The academy", "10 to 60 %", "plain"]),
      plain(["Wrist hinge", "The academy", "81 to 100°", "plain"]),
      plain(["Wrist hinge", "Age 9 to 12", "80 to 100°", "quiet"]),
    ]);
    expect(part.open?.links).toHaveLength(3);
  });
});

describe("the page of the owning rule", () => {
  const builtIn = policyOwning(POLICY);
  it("built in: the numbers of TRADE.md §3 in words", () => {
    const model = buildOwningPage(words, { rules: [], builtIn, today: TODAY });
    expect(model.title).toBe("A fundamental is owned when the built-in rule holds");
    expect(model.parts[0]?.paragraphs[0]).toBe(
      "The last 3 films without aid, each with its level inside the band with all doubt; 21 days or more from first to last; the last of them 7 days or more after practice; about 70 of 100 swings inside or more, and with doubt counted 55 or more.",
    );
  });
  it("the one in force, the planned one, and every earlier one as it was set", () => {
    const rule = (number: number, from: string, sessions: number) => ({
      ...{
        ...builtIn,
        number,
        from,
        sessions,
        who: "Lark",
        why: "a longer look",
        recordedAt: "2026-03-01T10:00:00.000Z",
      },
    });
    const rules = [rule(1, "2026-03-01", 4), rule(2, "2026-10-01", 5)];
    const model = buildOwningPage(words, { rules, builtIn, today: TODAY });
    expect(model.title).toContain("Sun 1 Mar 2026");
    expect(model.parts[0]?.paragraphs[0]).toContain("The last 4 films");
    expect(model.parts[0]?.paragraphs[1]).toMatch(/^From Thu 1 Oct 2026 on: The last 5 films/);
    expect(model.parts[1]?.table?.rows.map(({ cells }) => cells.slice(0, 3))).toEqual([
      ["2", "Thu 1 Oct 2026", "5"],
      ["1", "Sun 1 Mar 2026", "4"],
      ["built in", "from the start", "3"],
    ]);
    const sooner = [...rules, rule(3, "2026-09-01", 6)];
    const history = buildOwningPage(words, { rules: sooner, builtIn, today: TODAY }).parts[1]?.table?.rows;
    expect(history?.slice(0, 3).map(({ cells, tone }) => [...cells.slice(0, 2), tone])).toEqual([
      ["3", "Tue 1 Sep 2026", "plain"],
      ["2", "Thu 1 Oct 2026; replaced by rule 3, decides no film", "quiet"],
      ["1", "Sun 1 Mar 2026", "plain"],
    ]);
  });
});
