import { describe, expect, it } from "vitest";
import { spreadTable } from "@/lib/report/spread-table";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const BAND = { low: 85, high: 95 };
const NONE = { low: null, high: null };
const line = (name: string, goal: typeof BAND | typeof NONE, ...levels: readonly number[]) => ({
  name,
  placed: levels.map((level) => ({ level, goal })),
});

describe("the table of a drawing's dots", () => {
  it("counts by how far outside, from below to above, an end belonging to the nearer step", () => {
    // 85 − 81 = 4 and 85 − 83 = 2: steps of one degree end there.
    const { columns, rows } = spreadTable(words, "deg", [
      line("irons", BAND, 81, 83, 85, 90, 95, 95.1),
      line("woods", BAND, 81.5),
    ]);
    expect(columns.map(({ label }) => label)).toEqual(["Level", "irons", "woods", "Together"]);
    expect(rows.map(({ cells }) => cells)).toEqual([
      ["3 to 4° below", "1", "1", "2"],
      ["2 to 3° below", "0", "0", "0"],
      ["1 to 2° below", "1", "0", "1"],
      ["0 to 1° below", "0", "0", "0"],
      ["Between the edges", "3", "0", "3"],
      ["0 to 1° above", "1", "0", "1"],
    ]);
    expect(rows[1]?.tone).toBe("quiet");
  });

  it("all between the edges are one row, and one line needs no sum", () => {
    const { columns, rows } = spreadTable(words, "deg", [line("irons", BAND, 85, 90)]);
    expect(columns).toHaveLength(2);
    expect(rows.map(({ cells }) => cells)).toEqual([["Between the edges", "2"]]);
  });

  it("without bands it counts levels in steps, below 0 too", () => {
    const { caption, rows } = spreadTable(words, "deg", [line("All clubs", NONE, -1.5, -0.5, 0, 0.5, 2)]);
    expect(caption).toBe("Levels in steps");
    expect(rows.map(({ cells }) => cells)).toEqual([
      ["−2 to −1°", "1"],
      ["−1 to 0°", "1"],
      ["0 to 1°", "2"],
      ["1 to 2°", "0"],
      ["2 to 3°", "1"],
    ]);
    expect(spreadTable(words, "deg", [line("All clubs", NONE, 7)]).rows.map(({ cells }) => cells[1])).toEqual(["1"]);
  });
});
