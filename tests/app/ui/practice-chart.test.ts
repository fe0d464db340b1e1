import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { FORMS } from "@/app/_ui/chart-forms";
import { chartGeometry } from "@/app/_ui/chart-geometry";
import { SeasonAxis } from "@/app/_ui/small-chart/season-axis";
import { StaticChart } from "@/app/_ui/static-chart/static-chart";
import { countOf, madeSeasonChart } from "./made-season-chart";

const lane = (label: string) => ({
  label,
  bars: [
    { from: 0, to: 7, share: 0.25, label: `${label} one` },
    { from: 7, to: 14, share: 1, label: `${label} two` },
    { from: 195, to: 230, share: 0, label: `${label} three` },
  ],
});
const table = { caption: "weeks", columns: [], rows: [] };
const practice = { lanes: [lane("minutes"), lane("balls")], summary: "Practised.", table };

test.each(FORMS)(
  "%s: bars stand beneath the ribbons, inside the plot's width and the drawing, none over another",
  (form) => {
    const plain = chartGeometry(madeSeasonChart(), form);
    const geometry = chartGeometry({ ...madeSeasonChart(), practice }, form);
    expect(plain.practice).toEqual([]);
    const [minutes, balls] = geometry.practice;
    if (!minutes || !balls) throw new Error("no lanes");
    for (const bar of [...minutes.bars, ...balls.bars]) {
      expect(bar.y).toBeGreaterThanOrEqual(plain.height);
      expect(bar.y + bar.height).toBeLessThanOrEqual(geometry.height);
      expect(bar.x).toBeGreaterThanOrEqual(geometry.plot.left);
      expect(bar.x + bar.width).toBeLessThanOrEqual(geometry.plot.right + 1);
      expect(bar.height).toBeGreaterThanOrEqual(1);
    }
    const [low, high] = minutes.bars;
    expect((high?.height ?? 0) / (low?.height ?? 1)).toBeCloseTo(4, 5);
    expect((low?.x ?? 0) + (low?.width ?? 0)).toBeLessThanOrEqual(high?.x ?? 0);
    expect(balls.labelY).toBeGreaterThan(minutes.baseline);
  },
);

test("every bar is named, in the chart and under the season's axis", () => {
  const chart = { ...madeSeasonChart(), practice };
  const still = renderToStaticMarkup(createElement(StaticChart, { chart }));
  expect(countOf(still, /<title>minutes two<\/title>/g)).toBe(FORMS.length);
  const under = { drills: chart.drills, events: chart.events, practice };
  const axis = renderToStaticMarkup(createElement(SeasonAxis, { days: chart.x, under }));
  expect(countOf(axis, /<title>balls three<\/title>/g)).toBe(3);
  expect(still + axis).not.toMatch(/NaN|Infinity|undefined/);
});
