import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { refusalResponse } from "@/app/_server/door/refusal-page";
import { buildPreviewPage } from "@/app/_server/import/import-page";
import { buildProgressPage, sayProgress } from "@/app/_server/import/import-progress";
import { restOfImport, rowsOfImport } from "@/app/_server/import/import-rest";
import { buildUploadPage } from "@/app/_server/import/import-upload-page";
import { PHASES } from "@/app/_server/worker/file-tasks";
import { Import } from "@/app/_ui/import/import";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import type { ImportInput } from "@/lib/ingest/import-preview";
import { parseCsv } from "@/lib/ingest/parse-csv";
import { parseImport } from "@/lib/ingest/parse-import";
import { readWorkbook } from "@/lib/ingest/read-workbook";
import { refusedPreview } from "@/lib/ingest/refused-preview";
import { wordsFor } from "@/lib/words/catalogue";
import { BEA, LEO, TODAY } from "../../lib/ingest/import-setup";
import { makeWorkbook } from "../../lib/ingest/made-workbook";

const words = wordsFor("en");
const speaker = { words, fundamentals: BUILT_IN, grouping: SHORT_LIST };
const send = async () => undefined;
const inputOf = (bytes: Uint8Array, change: Partial<ImportInput> = {}): ImportInput => ({
  fileName: "season",
  bytes,
  contentHash: "hash",
  today: TODAY,
  students: [BEA, LEO],
  fundamentals: BUILT_IN,
  grouping: SHORT_LIST,
  answers: new Map(),
  defaults: { reader: "Wren" },
  ...change,
});
const textInput = (text: string) => inputOf(new TextEncoder().encode(text));
const HEAD = "student,date,club,swing,setup-tilt,note\n";

describe("the pages of an import", () => {
  it("the first takes a file or a pasted table, and says every form that is read", () => {
    const page = buildUploadPage(words, "");
    const markup = renderToStaticMarkup(createElement(Import, { model: page }));
    expect(markup.match(/<form/g)).toHaveLength(2);
    expect(markup).toContain("<textarea");
    expect(page.upload?.format.lines.join(" ")).toContain('[{"student": "Nia"');
    expect(page.upload?.samples.links.map(({ href }) => href)).toContain("/api/samples/season.xlsx");
  });

  it("the preview lists each column with its guess chosen and its units, each with what it showed", () => {
    const preview = parseImport(textInput(`${HEAD}Bea,2026-03-08,7-iron,1,6,\n`));
    const page = buildPreviewPage(speaker, "d", { fileName: "season" }, preview);
    const columns = page.preview?.mapping?.columns ?? [];
    expect(columns.map(({ meaning }) => meaning.value)).toEqual([
      "field:alias",
      "field:day",
      "field:club",
      "field:swing",
      "fundamental:setup-tilt",
      "field:note",
    ]);
    expect(columns.map(({ unit }) => unit?.value ?? null)).toEqual([null, null, null, null, "deg", null]);
    const markup = renderToStaticMarkup(createElement(Import, { model: page, action: send }));
    for (const { meaning } of columns)
      expect(markup).toContain(`name="shown:${meaning.name}" value="${meaning.value}"`);
    expect(markup.match(/<select/g)).toHaveLength(7);
  });

  it("says how many rows are ready, wait or are set aside", () => {
    const rows = ["Bea,2026-03-08,7-iron,1,6,", "Leo,2026-03-08,7-iron,1,6,", "Bea,soon,7-iron,1,6,"];
    const preview = parseImport(textInput(HEAD + rows.join("\n")));
    const page = buildPreviewPage(speaker, "d", { fileName: "season" }, preview);
    expect(page.preview?.saved.fates).toBe("One row is ready, one waits for an answer, one is set aside.");
  });

  it("says each phase of a reading, and offers to stop it without scripts", () => {
    for (const phase of Object.values(PHASES))
      expect(sayProgress(words, { state: "running", phase, read: 1000, of: 100_000 }).length).toBeGreaterThan(10);
    expect(sayProgress(words, { state: "running", phase: PHASES.reading, read: 1000, of: 100_000 })).toBe(
      "1,000 of 100,000 rows are read.",
    );
    const page = buildProgressPage(words, "d", "season", { state: "running", phase: 2, read: 1, of: 2 });
    const markup = renderToStaticMarkup(createElement(Import, { model: page, action: send }));
    expect(markup).toContain('value="stop"');
    expect(markup).toContain('href="/import/d"');
    const stopped = buildProgressPage(words, "d", "season", { state: "stopped" });
    expect(renderToStaticMarkup(createElement(Import, { model: stopped, action: send }))).toContain('value="read"');
  });

  it("a file that is too heavy is refused in words, with no columns and nothing to import", () => {
    const page = buildPreviewPage(speaker, "d", { fileName: "season" }, refusedPreview("heavy"));
    expect([page.preview?.mapping, page.preview?.saved.submit, page.preview?.saved.all]).toEqual([null, null, null]);
    expect(page.preview?.issues?.items[0]).toMatch(/more memory or time/);
  });
});

describe("a refusal before anything is kept", () => {
  it.each([413, 415, 422])("answers %d with what happened and what to do, markup made harmless", async (status) => {
    const response = refusalResponse(words, status, "A <b>picture</b>.");
    const page = await response.text();
    expect(response.status).toBe(status);
    expect(page).toContain("A &lt;b&gt;picture&lt;/b&gt;.");
    expect(page).toContain("Nothing of it was saved or changed.");
  });
});

describe("the rows as a file", () => {
  it("every row with its fate and its reason; a formula in a cell is made harmless", () => {
    const input = textInput(
      `${HEAD}Bea,2026-03-08,7-iron,1,6,=1+1\nLeo,2026-03-08,7-iron,1,6,\nBea,soon,7-iron,2,6,\n`,
    );
    const csv = rowsOfImport(speaker, input, parseImport(input));
    const { header, records } = parseCsv(csv.replaceAll("\r\n", "\n"));
    expect(header?.cells.slice(0, 4)).toEqual(["Row", "fate", "reason", "student"]);
    expect(records.map(({ cells }) => cells.slice(0, 2))).toEqual([
      ["2", "ready"],
      ["3", "waits for an answer"],
      ["4", "set aside"],
    ]);
    expect(csv.split("\r\n")[1]).toMatch(/,'=1\+1$/);
    expect(records[2]?.cells[2]).toMatch(/“soon” is not a date/);
  });

  it("the rest of a workbook and of JSON comes back as CSV that can be mended and imported", async () => {
    const rows = [
      HEAD.trim().split(","),
      ["Bea", "soon", "7-iron", 1, 6, null],
      ["Bea", "2026-03-08", "7-iron", 2, 6, null],
    ];
    const book = makeWorkbook([{ name: "S", rows }]);
    const inputs = [
      inputOf(book, { workbook: await readWorkbook(book) }),
      textInput(
        '[{"student":"Bea","date":"soon","club":"7-iron","swing":1,"setup-tilt":6},{"student":"Bea","date":"2026-03-08","club":"7-iron","swing":2,"setup-tilt":6}]',
      ),
    ];
    for (const input of inputs) {
      const csv = restOfImport(speaker, input, parseImport(input));
      expect(csv.split("\r\n")).toHaveLength(3);
      const mended = parseImport(textInput(csv.replace("soon", "2026-03-09")));
      expect([mended.rowsReady, mended.rowsTotal]).toEqual([1, 1]);
    }
  });
});
