import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { spreadFile } from "@/app/_ui/chart-file/spread-file";
import { buildSpread } from "@/lib/report/build-spread";
import type { SpreadChart } from "@/lib/report/spread-model";
import { wordsFor } from "@/lib/words/catalogue";
import { HOSTILE } from "../../lib/ingest/hostile-texts";
import { levelOf, spreadSource } from "../../lib/report/made-spread";
import { readXml } from "./read-xml";

const UI = path.join(import.meta.dirname, "../../../app/_ui");
const read = (name: string): string => readFileSync(path.join(UI, name), "utf8");
const sheets = { tokens: read("tokens.css"), spread: read("spread/spread-chart.module.css") };

function made(count = 40): SpreadChart {
  const tracks = Array.from({ length: count }, (_, at) => levelOf(`s${at}`, 70 + ((at * 7) % 37)));
  const chart = buildSpread(wordsFor("en"), spreadSource({ tracks })).counted?.levels.chart;
  if (!chart) throw new Error("no chart");
  return chart;
}

/** Where the marks of a kind begin, those of the legend too. */
function marksOf(file: string, kind: string): readonly (readonly [number, number])[] {
  return [...file.matchAll(new RegExp(`class="${kind}" d="([^"]*)"`, "g"))].flatMap(([, d]) =>
    [...(d ?? "").matchAll(/M([\d.-]+) ([\d.-]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const),
  );
}

describe("the levels of a fundamental as a file", () => {
  it.each(["colour", "one-colour"] as const)(
    "%s: a mark a level, the band and all words, and nothing from outside",
    (look) => {
      const chart = made();
      const file = spreadFile(chart, sheets, look);
      const { tags, texts } = readXml(file);
      const dots = chart.strips.flatMap((strip) => strip.dots);
      const of = (place: string): number => dots.filter((dot) => dot.place === place).length + 1;
      expect(dots).toHaveLength(40);
      expect(marksOf(file, "inside")).toHaveLength(of("inside"));
      expect(marksOf(file, "half")).toHaveLength(of("edge"));
      expect(marksOf(file, "ring")).toHaveLength(of("edge"));
      expect(marksOf(file, "outside")).toHaveLength(of("outside"));
      expect(tags.filter((tag) => tag === "svg")).toHaveLength(1);
      expect(texts).toEqual(
        expect.arrayContaining([chart.title, chart.sentence, chart.axisTitle, "85°", "95°", chart.strips[0]?.label]),
      );
      expect(file).not.toMatch(/<script|<foreignObject|<image|href=|@import|@font-face|var\(/);
      if (look === "one-colour") expect(file).not.toMatch(/#d55e00|#8a6d1f/);
      else expect(file).toContain("#d55e00");
    },
  );

  it("every mark lies within the drawing, of a thousand levels too", () => {
    for (const count of [1, 40, 1000]) {
      const file = spreadFile(made(count), sheets, "colour");
      const height = Number(/viewBox="-16 -16 [\d.]+ ([\d.]+)"/.exec(file)?.[1]);
      const all = ["inside", "ring", "outside"].flatMap((kind) => marksOf(file, kind));
      expect(all.length).toBeGreaterThanOrEqual(count);
      expect(height).toBeLessThan(500);
      for (const [x, y] of all) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(640);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(height - 16);
      }
    }
  });

  it(`${HOSTILE.length} hostile names of clubs stay text`, () => {
    for (const text of HOSTILE) {
      const chart = made();
      const strips = chart.strips.map((strip) => ({ ...strip, label: text }));
      const { tags } = readXml(spreadFile({ ...chart, strips, sentence: text }, sheets, "colour"));
      expect(tags).not.toContain("script");
      expect(tags.filter((tag) => tag === "svg")).toHaveLength(1);
    }
  });
});
