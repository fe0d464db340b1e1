import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { StaticChart } from "@/app/_ui/static-chart/static-chart";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { buildReach } from "@/lib/report/build-reach";
import { buildReachCurve } from "@/lib/report/build-reach-curve";
import { buildSeasonChart } from "@/lib/report/build-season-chart";
import type { FundamentalSource } from "@/lib/report/fundamental-source";
import { startNoiseModel } from "@/lib/stats/start-noise-model";
import { judgeTrack } from "@/lib/verdict/judge-track";
import { noiseAlways } from "@/lib/verdict/noise";
import { POLICY } from "@/lib/verdict/policy";
import { reachCurve } from "@/lib/verdict/reach-curve";
import { wordsFor } from "@/lib/words/catalogue";
import { flat, madeTrack } from "../verdict/made-track";

const words = wordsFor("en");
const noise = noiseAlways(startNoiseModel("start"));
const tilt = BUILT_IN.find((each) => each.id === "setup-tilt");
if (tilt === undefined) throw new Error("no such fundamental");

const rising = Array.from({ length: 14 }, (_, i) => (i <= 5 ? 0 : 60 * -Math.expm1((5 - i) / 6)));

function source(levels: readonly number[], low: number, today?: string): FundamentalSource {
  const { better: _, ...track } = madeTrack(3, levels, { goal: { low, high: low + 20 } });
  const judged: JudgedTrack = track;
  const { verdict } = judgeTrack(judged, noise, POLICY, "looks");
  const last = judged.sessions.at(-1)?.date ?? "";
  return {
    student: { id: "s" },
    verdict: { ...verdict, listed: true },
    history: {
      fundamental: tilt,
      goal: { low, high: low + 20 },
      goals: [{ low, high: low + 20, from: "0001-01-01" }],
      judged,
      sessions: judged.sessions.map((session, index) => ({
        session: { day: session.date, id: `${index}` },
        swings: session.swings.map((value, at) => ({ number: at + 1, value, read: value })),
        captureSd: 1,
        index,
        apart: null,
        fingerprint: null,
      })),
    },
    drills: [],
    events: [],
    reachCurve: reachCurve(judged, verdict, noise, POLICY),
    asOf: today ?? last,
    today: today ?? last,
  } as unknown as FundamentalSource;
}
const chartOf = (from: FundamentalSource) =>
  buildSeasonChart(words, { ...from, curve: buildReachCurve(words, from), from: null, practice: [] });

describe("the learning curve on the chart", () => {
  const near = source(rising, 54);
  const curve = buildReachCurve(words, near);

  it("its bar is the range of days that the sentence says, on the edge that is neared", () => {
    const { reach } = near.verdict;
    if (reach?.kind !== "dates") throw new Error("no dates");
    expect(curve?.arrival).toMatchObject({ from: dayNumber(reach.from), to: dayNumber(reach.to), at: 54 });
    expect(curve?.sentence).toBe(buildReach(words, near));
    expect(curve?.table.rows).toHaveLength(curve?.points.length ?? -1);
    expect(curve?.table.rows.at(-1)?.cells[0]).toContain(reach.to.slice(0, 4));
  });

  it("the time axis goes on to the last day said, and the value axis holds the curve", () => {
    const chart = chartOf(near);
    const end = curve?.points.at(-1)?.day ?? Number.NaN;
    expect(chart.x.to).toBeGreaterThanOrEqual(end);
    expect(chart.x.to - end).toBeLessThan(12);
    for (const { low, high } of curve?.points ?? []) {
      expect(low).toBeGreaterThanOrEqual(chart.y.low);
      expect(high).toBeLessThanOrEqual(chart.y.high);
    }
    expect(chart.summary).toContain(buildReach(words, near));
  });

  it("stands in the still drawing, without scripts", () => {
    const markup = renderToStaticMarkup(createElement(StaticChart, { chart: chartOf(near) }));
    expect(markup).toContain(curve?.arrival?.label ?? "no label");
    expect(markup).toMatch(/curveEdge/);
  });

  it("once the last of the days has gone by, or the last film is long ago, nothing is drawn", () => {
    const { reach } = near.verdict;
    const passed = reach?.kind === "dates" ? dayFromNumber(dayNumber(reach.to) + 1) : "";
    expect(buildReachCurve(words, source(rising, 54, passed))).toBeNull();
    const away = dayFromNumber(dayNumber(near.today) + 43);
    expect(buildReachCurve(words, source(rising, 54, away))).toBeNull();
  });

  it("a change that isn’t on the roster’s list promises nothing", () => {
    const alone = { ...near, verdict: { ...near.verdict, listed: false } };
    expect(buildReachCurve(words, alone)).toBeNull();
    expect(chartOf(alone).x.to).toBeLessThan(chartOf(near).x.to);
  });

  it("a gain that stopped short has a curve up to its last film and no days", () => {
    const short = source([...flat(8, 0), ...flat(14, 30)], 60);
    const drawn = buildReachCurve(words, short);
    expect(drawn?.arrival).toBeNull();
    expect(dayFromNumber(drawn?.points.at(-1)?.day ?? 0)).toBe(short.today);
  });

  it("nothing said, nothing drawn", () => {
    expect(buildReachCurve(words, { ...near, reachCurve: null })).toBeNull();
    expect(buildReachCurve(words, source(flat(10, 0), 60))).toBeNull();
  });
});
