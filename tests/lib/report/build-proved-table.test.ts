import Papa from "papaparse";
import { expect, it } from "vitest";
import { buildProvedTable } from "@/lib/report/build-proved-table";
import type { RosterPage } from "@/lib/report/roster-model";
import { buildTableCsv } from "@/lib/report/table-downloads";
import { wordsFor } from "@/lib/words/catalogue";

const row: RosterPage["proved"]["rows"][number] = {
  glyph: "slip",
  word: "Real slip",
  student: "=cmd Dot",
  fundamental: "Foot line",
  href: "/students/a/foot-line",
  levels: "2° → 7°",
  size: "+5 ± 2°",
  tone: "away",
  days: "3 to 9 May",
  sure: "1 in 40",
  position: "outside",
  strip: { summary: "", dots: [], levels: [], changes: [], edges: "both", now: null },
};

it("holds every word of the page's row once, who and what apart, and a name that looks like a formula is guarded", () => {
  const proved = {
    margin: "",
    since: "",
    heading: "One change is new",
    columns: [],
    rows: [row],
    empty: "",
    download: null,
    seen: null,
  };
  const table = buildProvedTable(wordsFor("en"), proved);
  const [head, first] = Papa.parse<string[]>(buildTableCsv(table), { skipEmptyLines: true }).data;
  expect(head).toHaveLength(8);
  expect(new Set(head).size).toBe(8);
  expect(first).toEqual([
    "Real slip",
    "'=cmd Dot",
    "Foot line",
    "2° → 7°",
    "'+5 ± 2°",
    "3 to 9 May",
    "1 in 40",
    "outside",
  ]);
});
