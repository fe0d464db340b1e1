import { readFileSync } from "node:fs";
import path from "node:path";
import { createElement } from "react";
import { describe, expect, it } from "vitest";
import { chartFile } from "@/app/_ui/chart-file/chart-file";
import { classNames, inlineStyle } from "@/app/_ui/chart-file/inline-style";
import { writeMarkup } from "@/app/_ui/chart-file/write-markup";
import { HOSTILE } from "../../lib/ingest/hostile-texts";
import { countOf, madeSeasonChart } from "./made-season-chart";
import { readXml } from "./read-xml";

const UI = path.join(import.meta.dirname, "../../../app/_ui");
const sheets = {
  tokens: readFileSync(path.join(UI, "tokens.css"), "utf8"),
  marks: readFileSync(path.join(UI, "chart-marks/chart-marks.module.css"), "utf8"),
};

describe("a chart as a file", () => {
  it("the reader finds what is wrong: a tag that is left open, an attribute without quotes", () => {
    expect(() => readXml("<svg><g></svg>")).toThrow();
    expect(() => readXml("<svg><g a=1></g></svg>")).toThrow();
  });

  it.each(["colour", "one-colour"] as const)(
    "%s: valid XML, named and described, with its styles and nothing from outside",
    (look) => {
      const file = chartFile(madeSeasonChart(), sheets, look);
      const { tags, texts } = readXml(file);
      expect(tags[0]).toBe("svg");
      expect(texts).toContain("Three levels, two changes");
      expect(tags).toEqual(expect.arrayContaining(["style", "title", "desc", "path", "circle", "pattern"]));
      expect(file).not.toMatch(/<script|<foreignObject|<image|\son\w+=|href=|@import|@font-face|var\(/);
      expect(file.replace('xmlns="http://www.w3.org/2000/svg"', "")).not.toMatch(/https?:|\/\//);
      expect(countOf(file, /class="[^"]*"/g)).toBeGreaterThan(20);
      // Every class that is used has a rule in the file, under the name of the style sheet.
      const ruled = classNames(sheets.marks);
      for (const [, list] of file.matchAll(/ class="([^"]*)"/g))
        for (const name of (list ?? "").split(" ")) expect(ruled).toContain(name);
      for (const [, id] of file.matchAll(/url\(#([^)]+)\)/g)) expect(file).toContain(`id="${id}"`);
    },
  );

  it("one colour has neither the blue nor the vermillion of the pages, and still tells gain from slip by its hatching", () => {
    const [colour, one] = [inlineStyle(sheets, "colour").css, inlineStyle(sheets, "one-colour").css];
    expect(colour).toContain("#0072b2");
    expect(colour).toContain("#d55e00");
    expect(one).not.toMatch(/#0072b2|#d55e00|#00639b|#a84a00/);
    expect(chartFile(madeSeasonChart(), sheets, "one-colour")).toContain("url(#chart-toward)");
    expect(() => inlineStyle({ ...sheets, marks: ".x{fill:var(--nobody)}" }, "colour")).toThrow("--nobody");
  });

  it(`J2: ${HOSTILE.length} hostile texts as heading and labels stay text in valid XML`, () => {
    for (const text of HOSTILE) {
      const made = madeSeasonChart();
      const file = chartFile({ ...made, heading: text, unitLabel: text, bandLabel: `a ${text}` }, sheets, "colour");
      const { tags, texts } = readXml(file);
      expect(tags).not.toContain("script");
      expect(tags.filter((tag) => tag === "svg")).toHaveLength(1);
      if (text.trim() !== "" && !text.includes("\u0000")) expect(texts.join("\n")).toContain(text);
    }
  });

  it("a part that is no function of its props can't be written", () => {
    expect(writeMarkup(createElement("text", { textAnchor: "end", x: 1 }, 'a<b & "c"'))).toBe(
      '<text text-anchor="end" x="1">a&lt;b &amp; "c"</text>',
    );
    expect(() => writeMarkup(createElement({ $$typeof: Symbol() } as never))).toThrow(TypeError);
  });
});
