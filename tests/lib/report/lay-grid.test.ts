import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { buildGridWords } from "@/lib/report/build-grid-words";
import type { GridCell } from "@/lib/report/grid-model";
import { type GridPlan, layGrid } from "@/lib/report/lay-grid";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const columns = ["hinge", "foot-line", "hip-sway"].map((id) => BUILT_IN.find((each) => each.id === id) as Fundamental);

function grid(filled: Readonly<Record<string, string>> = {}, over: Partial<GridPlan> = {}) {
  const cell = (swing: number, { id }: Fundamental): GridCell => {
    const name = `r.${swing}.${id}`;
    return { name, label: name, value: filled[name] ?? "", error: "", asked: "no", confirmed: "no" };
  };
  return layGrid(words, {
    caption: "Readings",
    explains: "",
    columns,
    first: 1,
    rest: "shut",
    hand: "right",
    swings: [1, 2, 3, 4, 5, 6, 7],
    shown: 5,
    cell,
    arrangement: "swings",
    letters: "on",
    allRight: "no",
    sheet: null,
    ...over,
  });
}

describe("a grid laid out", () => {
  it("has a row a swing and a cell a fundamental, five swings shown, the rest shut", () => {
    const { rows, shown, rest } = grid();
    expect(rows.map((row) => row.cells.map((cell) => cell.name))[1]).toEqual([
      "r.2.hinge",
      "r.2.foot-line",
      "r.2.hip-sway",
    ]);
    expect([rows.length, shown, rest?.open]).toEqual([7, 5, "no"]);
  });

  it("opens the rest where something stands in it, and shows every swing up to the last one used", () => {
    expect(grid({ "r.7.hinge": "88" })).toMatchObject({ shown: 7, rest: { open: "no" } });
    expect(grid({ "r.1.hip-sway": "n/m" })).toMatchObject({ shown: 5, rest: { open: "yes" } });
    expect(grid({}, { rest: "open" }).rest?.open).toBe("yes");
  });

  it("has no rest where every fundamental stands first", () => expect(grid({}, { first: 3 }).rest).toBeNull());

  it("a head says unit, sign, checkpoint and view, and what is plausible for anyone", () => {
    expect(grid().columns[2]).toMatchObject({
      label: "Hip sway, top",
      unit: "% of stance",
      sign: "plus = away from the target",
      checkpoint: "the top, face-on",
      plausible: { low: -60, high: 60 },
    });
  });

  it("orders checkpoints as a swing goes: setup, lead arm parallel, top", () => {
    const order = Object.fromEntries(grid().columns.map((column) => [column.fundamentalId, column.checkpointOrder]));
    expect([
      (order["foot-line"] as number) < (order.hinge as number),
      (order.hinge as number) < (order["hip-sway"] as number),
    ]).toEqual([true, true]);
  });
});

describe("the sentences of a grid", () => {
  it("leave the gaps open that are filled while one types", () => {
    const said = buildGridWords(words);
    expect(said.count).toContain("{answered}");
    expect(said.count).toContain("{begun}");
    expect(said.unusual).toContain("{value}");
    expect(said.overflow).toMatch(/\{lines\}.*\{places\}.*\{roomLines\}.*\{roomPlaces\}/);
    expect([...said.keys, ...said.letterKeys].every((each) => each.keys.every((key) => key.length > 0))).toBe(true);
  });

  it("ask of anyone, never of this student", () => {
    expect(buildGridWords(words).unusual).toMatch(/in anyone/);
    expect(JSON.stringify(buildGridWords(words))).not.toMatch(/usual for (him|her|them|this student)/);
  });
});
