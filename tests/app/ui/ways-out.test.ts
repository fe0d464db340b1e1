import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";

const UI = path.join(import.meta.dirname, "../../../app/_ui");

/** Components with that tag, by their place in the house of components. */
function componentsWith(tag: string): string[] {
  return readdirSync(UI, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".tsx") && readFileSync(path.join(UI, name), "utf8").includes(`<${tag}`))
    .map((name) => name.replaceAll(path.sep, "/"))
    .sort();
}

/** Where a drawing of a page goes out, or why it needs no way out. */
const DRAWINGS: Readonly<Record<string, string>> = {
  "academy/month-chart.tsx": "counts a month; the table beside it goes out",
  "chart-file/drawing-file.tsx": "writes the files",
  "chart-file/family-file.tsx": "writes the file for the family",
  "compare/effect-mark.tsx": "a mark in a table's cell; the table goes out",
  "contact/share-mark.tsx": "one figure that stands in words beside it and in the contact table",
  "decides/decides.tsx": "pictures of a count, the same for everybody; the counts stand beside it",
  "drill-seasons/seasons-chart.tsx": "the table beneath goes out, and every student's own chart",
  "family/picture.tsx": "goes out in the file for the family",
  "filming/line-drawing.tsx": "a drawing of how to stand the phone: no data; the card is printed",
  "frame/mark.tsx": "the product's own mark",
  "fundamental/interval-marks.tsx": "a mark in a table's cell; the table goes out",
  "glyph/glyph.tsx": "a verdict's shape beside its word",
  "people/people.tsx": "the key of a code program: shown once, kept nowhere",
  "rereads/differences.tsx": "chart-file/plot-file.tsx",
  "small-chart/season-axis.tsx": "chart-file/season-file.tsx",
  "small-chart/small-chart.tsx": "chart-file/season-file.tsx",
  "spread/spread-chart.tsx": "chart-file/spread-file.tsx",
  "static-chart/static-chart.tsx": "chart-file/chart-file.tsx",
  "strip/strip.tsx": "a mark in the roster's cell; the table and every track's chart go out",
};

/** Tables that are drawn otherwise than by the one component that bears its download, and why. */
const TABLES: Readonly<Record<string, string>> = {
  "capture/capture-answer.tsx": "an answer to what is being typed; nothing is on file yet",
  "grid/grid-table.tsx": "fields to type into; what is saved goes out with the readings",
  "import/sheet.tsx": "rows of an upload that nobody has confirmed; its rest is a file of its own",
  "keep/both.tsx": "two windows' typing side by side, until one is chosen",
  "practice/practice-form.tsx": "fields to type into; the table of practice goes out",
  "roster/proved-table.tsx": "its download stands under it",
  "roster/roster-table.tsx": "its download stands under it",
  "sheet/reading-sheet.tsx": "an empty sheet to be printed and filled by hand",
  "table/table.tsx": "bears its download",
};

describe("ways out of a page", () => {
  it("every component that draws goes out as a file or says why it doesn't", () => {
    expect(componentsWith("svg")).toEqual(Object.keys(DRAWINGS).sort());
    for (const told of Object.values(DRAWINGS).filter((each) => each.endsWith(".tsx")))
      expect(readFileSync(path.join(UI, told), "utf8")).toContain("drawingFile(");
  });

  it("every table is the one component with its download, or says why it isn't", () => {
    expect(componentsWith("table")).toEqual(Object.keys(TABLES).sort());
  });
});
