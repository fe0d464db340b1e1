import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { chartFile } from "@/app/_ui/chart-file/chart-file";
import { classNames } from "@/app/_ui/chart-file/inline-style";
import { plotFile } from "@/app/_ui/chart-file/plot-file";
import { seasonFile } from "@/app/_ui/chart-file/season-file";
import { buildDifferencePlot } from "@/lib/report/difference-plot";
import type { SeasonPage, SeasonRow } from "@/lib/report/page-model";
import { wordsFor } from "@/lib/words/catalogue";
import { HOSTILE } from "../../lib/ingest/hostile-texts";
import { madeSource } from "../../lib/report/made-reader-error";
import { madePairs } from "../../lib/verdict/made-rereads";
import { countOf, madeSeasonChart } from "./made-season-chart";
import { readXml } from "./read-xml";

const UI = path.join(import.meta.dirname, "../../../app/_ui");
const read = (name: string): string => readFileSync(path.join(UI, name), "utf8");
const sheets = {
  tokens: read("tokens.css"),
  marks: read("chart-marks/chart-marks.module.css"),
  small: read("small-chart/small-chart.module.css"),
  glyph: read("glyph/glyph.module.css"),
  plot: read("rereads/differences.module.css"),
};

function madeRow(name: string, fundamentalId: string): SeasonRow {
  return {
    fundamentalId,
    href: "/x",
    name,
    place: "keep",
    glyph: "gain",
    word: "Real gain",
    text: `A gain of ${name}.`,
    chart: { ...madeSeasonChart(), drills: [], events: [] },
    facts: [{ name: "level now", value: "7 ± 2°", note: "" }],
  };
}

function madeEvidence(names: readonly string[]): SeasonPage["evidence"] {
  return {
    margin: "",
    explains: "",
    heading: "2 of 2 inside",
    groups: [{ label: "setup", rows: names.map((name, place) => madeRow(name, `f${place}`)) }],
    files: null,
    drills: [{ from: 25, to: 60, label: "Two-stick rails" }],
    events: [{ from: 100, to: 100, label: "new clubs" }],
  };
}

function madePlot() {
  const pairs = madePairs([5, 7, 5, 7]);
  const { fundamental, error } = madeSource(pairs);
  const plot = buildDifferencePlot(wordsFor("en"), fundamental, pairs, error.sameFilm);
  if (plot === null) throw new Error("no plot");
  return plot;
}

/** The finished sheet in a file: what rules it holds. */
const ruled = (file: string): readonly string[] => classNames(/<style>([\s\S]*?)<\/style>/.exec(file)?.[1] ?? "");

function expectSelfContained(file: string): void {
  expect(file).not.toMatch(/<script|<foreignObject|<image|\son\w+=|href=|@import|@font-face|@container|var\(/);
  expect(file.replace('xmlns="http://www.w3.org/2000/svg"', "")).not.toMatch(/https?:|\/\//);
  for (const [, list] of file.matchAll(/ class="([^"]*)"/g))
    for (const name of (list ?? "").split(" ").filter((each) => !/^(small-)?small$/.test(each)))
      expect(ruled(file)).toContain(name);
  const ids = [...file.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const [, id] of file.matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(id);
}

describe("a season's charts as one file", () => {
  it.each(["colour", "one-colour"] as const)(
    "%s: one drawing of every row with its words, and nothing from outside",
    (look) => {
      const file = seasonFile(madeEvidence(["Foot line", "Wrist hinge"]), sheets, look);
      const { tags, texts } = readXml(file);
      expectSelfContained(file);
      expect(tags.filter((tag) => tag === "svg")).toHaveLength(1);
      for (const text of ["2 of 2 inside", "Foot line", "Wrist hinge", "Two-stick rails", "new clubs", "7 ± 2°"])
        expect(texts).toContain(text);
      expect(texts.join("\n")).toContain("Foot line · Real gain · A gain of Foot line.");
      if (look === "one-colour") expect(file).not.toMatch(/#0072b2|#d55e00|#00639b|#a84a00/);
      else expect(file).toContain("#0072b2");
    },
  );

  it("a chart more is 104 pixels more, whatever its name is", () => {
    const height = (names: readonly string[]): number =>
      Number(/ height="(\d+)"/.exec(seasonFile(madeEvidence(names), sheets, "colour"))?.[1]);
    expect(height(["A", "B", "C ".repeat(200)]) - height(["A", "B"])).toBe(104);
  });

  it(`${HOSTILE.length} hostile names stay text in valid XML`, () => {
    for (const text of HOSTILE) {
      const { tags } = readXml(seasonFile(madeEvidence([text]), sheets, "colour"));
      expect(tags).not.toContain("script");
      expect(tags.filter((tag) => tag === "svg")).toHaveLength(1);
    }
  });
});

describe("the plot of re-readings as a file", () => {
  it.each(["colour", "one-colour"] as const)(
    "%s: a dot a place, with its axes' words, and nothing from outside",
    (look) => {
      const plot = madePlot();
      const file = plotFile(plot, sheets, look);
      const { texts } = readXml(file);
      expectSelfContained(file);
      expect(countOf(file, /<circle/g)).toBe(plot.dots.length);
      expect(texts).toEqual(expect.arrayContaining([plot.xTitle, plot.yTitle, plot.sentence, plot.bias?.label]));
    },
  );

  it(`${HOSTILE.length} hostile texts stay text`, () => {
    for (const text of HOSTILE) {
      const { tags } = readXml(plotFile({ ...madePlot(), sentence: text, xTitle: text }, sheets, "colour"));
      expect(tags).not.toContain("script");
      expect(tags.filter((tag) => tag === "svg")).toHaveLength(1);
    }
  });
});

it("the unit of a chart whose axis ends on a tick stands clear of that tick's label", () => {
  const made = madeSeasonChart();
  const topOf = (high: number): number => {
    const y = {
      low: 0,
      high,
      ticks: [
        { at: 0, label: "0" },
        { at: 100, label: "100 %" },
      ],
    };
    const file = chartFile({ ...made, unitLabel: "% solid", y, bands: [] }, sheets, "colour");
    const at = (label: string): number => Number(new RegExp(`y="([\\d.-]+)"[^>]*>${label}<`).exec(file)?.[1]);
    return at("100 %") - at("% solid");
  };
  // 14 px letters: a line needs as much.
  expect(topOf(100)).toBeGreaterThanOrEqual(14);
  expect(topOf(120)).toBeGreaterThanOrEqual(14);
});

it("what goes on ends in a point towards today, what has ended in a stop, and what began today is still seen", () => {
  const drawn = (from: number, end?: "open"): string =>
    chartFile(
      { ...madeSeasonChart(), drills: [], events: [{ from, to: 200, label: "pause", ...(end ? { end } : {}) }] },
      sheets,
      "colour",
    );
  const path = (file: string): string => / class="event" d="([^"]+)"/.exec(file)?.[1] ?? "";
  const point = /L[\d.]+ [\d.]+L[\d.]+ [\d.]+$/;
  expect(path(drawn(100, "open"))).toMatch(point);
  expect(path(drawn(100))).not.toMatch(point);
  const [, start, stop] = /^M([\d.]+) .*H([\d.]+)M/.exec(path(drawn(200, "open"))) ?? [];
  expect(Number(stop) - Number(start)).toBe(10);
});
