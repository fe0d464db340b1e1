import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { FORMS } from "@/app/_ui/chart-forms";
import { SmallChart } from "@/app/_ui/small-chart/small-chart";
import { StaticChart } from "@/app/_ui/static-chart/static-chart";
import type { SeasonChart } from "@/lib/report/chart-model";
import { countOf, madeSeasonChart } from "./made-season-chart";

const draw = (chart: SeasonChart) => renderToStaticMarkup(createElement(StaticChart, { chart }));

test("a drawing for every width, each named by the chart's finding and described by its summary", () => {
  const markup = draw(madeSeasonChart());
  expect(countOf(markup, /role="img"/g)).toBe(FORMS.length);
  expect(countOf(markup, /<title [^>]*>Three levels, two changes<\/title>/g)).toBe(FORMS.length);
  expect(countOf(markup, /<desc [^>]*>A level of 12° until day 30/g)).toBe(FORMS.length);
});

test("ids are used once, and every hatching and name that is pointed at exists", () => {
  const markup = draw(madeSeasonChart());
  const ids = [...markup.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
  expect(new Set(ids).size).toBe(ids.length);
  const pointed = [
    ...[...markup.matchAll(/url\(#([^)]+)\)/g)].map(([, id]) => id),
    ...[...markup.matchAll(/aria-labelledby="([^"]+)"/g)].flatMap(([, list]) => (list ?? "").split(" ")),
  ];
  expect(pointed.filter((id) => !ids.includes(id))).toEqual([]);
});

test("a gain, a slip and a move that is neither are hatched each its own way", () => {
  const chart = madeSeasonChart();
  const [gain, slip] = chart.changes;
  if (gain === undefined || slip === undefined) throw new Error("the made season has two changes");
  for (const direction of ["toward", "away", "neither"] as const) {
    const markup = draw({ ...chart, changes: [{ ...gain, direction }] });
    expect(countOf(markup, new RegExp(`fill="url\\(#[^)]*-${direction}\\)"`, "g"))).toBe(FORMS.length);
  }
});

test("the six judged sessions and the one set aside are circles, the one with an aid is not; 24 swings are 24 ticks of one path", () => {
  const [wide] = draw(madeSeasonChart()).split("</svg>");
  expect(countOf(wide ?? "", /<circle /g)).toBe(7);
  expect(countOf(wide ?? "", /h8(?=[M"])/g)).toBe(24);
});

test("a level that is not settled is dashed and hatched, so it doesn't read as proved", () => {
  const [wide] = draw(madeSeasonChart()).split("</svg>");
  expect(countOf(wide ?? "", /fill="url\(#[^)]*-open\)"/g)).toBe(1);
});

test("every word of the drawing comes from the model", () => {
  const chart = madeSeasonChart();
  const known = JSON.stringify(chart);
  const texts = [...draw(chart).matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text ?? "");
  expect(texts.length).toBeGreaterThan(40);
  expect(texts.filter((text) => !known.includes(text))).toEqual([]);
});

test("a band with one edge has one edge and a field that runs on", () => {
  const chart = madeSeasonChart();
  const markup = draw({
    ...chart,
    bands: [{ from: 0, to: 200, low: null, high: 4, lowLabel: null, highLabel: "+4°" }],
  });
  expect(markup).toContain("+4°</text>");
  expect(markup).not.toContain("−3° open");
});

test("no session at all still draws the band and the axes", () => {
  const markup = draw({ ...madeSeasonChart(), sessions: [], levels: [], changes: [] });
  expect(markup).not.toMatch(/NaN|Infinity|undefined/);
  expect(markup).toContain("+4° closed");
});

test("one session on one day draws no broken number", () => {
  const chart = madeSeasonChart();
  const one = { ...chart, x: { from: 5, to: 5, ticks: [] }, sessions: chart.sessions.slice(0, 1), changes: [] };
  expect(draw(one)).not.toMatch(/NaN|Infinity|undefined/);
});

test("the small chart speaks the same finding and draws no swings", () => {
  const chart = madeSeasonChart();
  const markup = renderToStaticMarkup(createElement(SmallChart, { chart }));
  expect(markup).toContain(">Three levels, two changes</title>");
  expect(markup).not.toMatch(/h8(?=[M"])|NaN|undefined/);
});

test("a goal band that changed at mid-season holds over its own days in the small chart too, and its fields never overlap", () => {
  const chart = madeSeasonChart();
  const [band] = chart.bands;
  if (band === undefined) throw new Error("the made season has a band");
  const bands = [
    { ...band, to: 100, high: 8 },
    { ...band, from: 100 },
  ];
  const [wide] = renderToStaticMarkup(createElement(SmallChart, { chart: { ...chart, bands } })).split("</svg>");
  const fields = [...(wide ?? "").matchAll(/<rect class="[^"]*field[^"]*" x="([\d.]+)"[^>]* width="([\d.]+)"/g)];
  const [first, second] = fields.map(([, left, width]) => ({
    left: Number(left),
    right: Number(left) + Number(width),
  }));
  expect(fields.length).toBe(2);
  expect(first?.right).toBeCloseTo(second?.left ?? Number.NaN, 0);
});

test("the edges of a band of a tenth of a unit are named 16 px apart, not one over the other", () => {
  const chart = madeSeasonChart();
  const bands = [{ from: 0, to: 200, low: 3.9, high: 4, lowLabel: "3.9°", highLabel: "4.0°" }];
  const [wide] = renderToStaticMarkup(createElement(SmallChart, { chart: { ...chart, bands } })).split("</svg>");
  const at = (label: string) => Number(new RegExp(`y="([\\d.]+)">${label}<`).exec(wide ?? "")?.[1]);
  expect(at("3.9°") - at("4.0°")).toBeCloseTo(16, 1);
});
