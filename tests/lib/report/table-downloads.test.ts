import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import type { TableModel } from "@/lib/report/basic-model";
import { buildTableCsv, findTable, withTableDownloads } from "@/lib/report/table-downloads";

const table = (caption: string): TableModel => ({
  caption,
  columns: [
    { label: "day", align: "start" },
    { label: "=level", align: "end" },
  ],
  rows: [
    { cells: ["9 Sep", "−2.3°"], tone: "plain" },
    { cells: ["@noon", "+5.3 ± 2.3°"], tone: "quiet" },
  ],
});
const link = { href: "/own", label: "own" };
const page = {
  title: "x",
  sessions: { heading: "h", table: table("first") },
  contact: { table: table("has its own"), download: link },
  parts: [{ table: null }, { table: table("second") }, table("third")],
  chart: { levels: [1, 2, 3], rows: [] },
};
const linked = withTableDownloads(page, (place) => ({ href: `/${place}`, label: "csv" }));

describe("downloads of a page's tables", () => {
  it("every table that has none gets one, numbered in the order of the fields; nothing else changes", () => {
    expect(linked.sessions.table.download?.href).toBe("/0");
    expect((linked.parts[1] as { table: TableModel }).table.download?.href).toBe("/1");
    expect((linked.parts[2] as TableModel).download?.href).toBe("/2");
    expect(linked.contact).toEqual(page.contact);
    expect(linked.chart).toEqual(page.chart);
    expect(linked.title).toBe("x");
  });

  it("the number finds the table again, in the plain model and in the linked one", () => {
    for (const model of [page, linked])
      expect([0, 1, 2, 3, -1].map((place) => findTable(model, place)?.caption)).toEqual([
        "first",
        "second",
        "third",
        undefined,
        undefined,
      ]);
  });

  it("the file has the cells of the page, guarded, as papaparse reads them", () => {
    const file = buildTableCsv(table("x"));
    expect(Papa.parse<string[]>(file, { skipEmptyLines: true }).data).toEqual([
      ["day", "'=level"],
      ["9 Sep", "−2.3°"],
      ["'@noon", "'+5.3 ± 2.3°"],
    ]);
  });
});
