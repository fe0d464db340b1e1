import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { type MadeSheet, makeWorkbook, STYLE } from "../lib/ingest/made-workbook";

const folder = path.join(import.meta.dirname, "../../seed/samples");

/** Cells of the long sample; its texts hold no quotes and no line breaks. */
function sampleCells(): readonly (readonly string[])[] {
  const text = readFileSync(path.join(folder, "season-long.csv"), "utf8");
  return text
    .trim()
    .split(/\r?\n/)
    .map((line) => line.split(","));
}

const dayCount = (day: string): number => Date.parse(`${day}T00:00:00Z`) / 86_400_000 + 25_569;

/** The long sample as a workbook: days as days, numbers as numbers, and a hidden sheet beside it. */
export function sampleWorkbook(): Uint8Array {
  const [head = [], ...rows] = sampleCells();
  const season: MadeSheet["rows"] = rows.map((cells) =>
    cells.map((cell, at) => {
      if (head[at] === "date") return { raw: String(dayCount(cell)), style: STYLE.date };
      return /^-?\d+(?:\.\d+)?$/.test(cell) ? { raw: cell } : cell;
    }),
  );
  return makeWorkbook([
    { name: "Season", rows: [head, ...season] },
    { name: "Clubs", rows: [["club"], ["7-iron"]], state: "hidden" },
  ]);
}

/** The long sample as JSON, one object a row. */
export function sampleJson(): string {
  const [head = [], ...rows] = sampleCells();
  const objects = rows.map((cells) => {
    const fields = cells.flatMap((cell, at) => {
      if (cell === "") return [];
      const value = /^-?\d+(?:\.\d+)?$/.test(cell) ? cell : JSON.stringify(cell);
      return [`${JSON.stringify(head[at])}: ${value}`];
    });
    return `  {${fields.join(", ")}}`;
  });
  return `[\n${objects.join(",\n")}\n]\n`;
}

if (process.argv[2] === "--write") {
  writeFileSync(path.join(folder, "season.xlsx"), sampleWorkbook());
  writeFileSync(path.join(folder, "season.json"), sampleJson());
}
