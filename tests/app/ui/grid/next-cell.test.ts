import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CellPlace, type GridLayout, type GridMove, type GridShape, nextCell } from "@/app/_ui/grid/next-cell";

const LAYOUTS: readonly GridLayout[] = ["table-swings", "table-columns", "lines-swings", "lines-columns"];
const shape: GridShape = { swings: 5, columns: 6, first: 2 };
const at = (swing: number, column: number): CellPlace => ({ swing, column });
const go = (layout: GridLayout, from: CellPlace, move: GridMove) => nextCell(layout, shape, from, move);

describe("the next cell", () => {
  it("on goes down a column of swings, and from the last swing to the top of the next column; back reverses", () => {
    expect(go("table-swings", at(0, 0), "on")).toEqual(at(1, 0));
    expect(go("table-swings", at(4, 0), "on")).toEqual(at(0, 1));
    expect(go("table-swings", at(0, 1), "back")).toEqual(at(4, 0));
  });

  it("one stays at the last cell of all, and at the first", () => {
    for (const layout of LAYOUTS) {
      expect(go(layout, at(4, 5), "on")).toBeNull();
      expect(go(layout, at(0, 0), "back")).toBeNull();
    }
  });

  it("arrows go as they point, from the first table into the rest, and stop at the edges", () => {
    expect(go("table-swings", at(2, 1), "right")).toEqual(at(2, 2));
    expect(go("table-swings", at(2, 1), "down")).toEqual(at(3, 1));
    expect(go("table-swings", at(0, 1), "up")).toBeNull();
    expect(go("table-swings", at(0, 5), "right")).toBeNull();
    expect(go("table-columns", at(2, 1), "right")).toEqual(at(3, 1));
    expect(go("table-columns", at(2, 1), "down")).toEqual(at(2, 2));
  });

  it("one cell a line: down goes line by line, swing by swing or fundamental by fundamental; aside is nowhere", () => {
    expect(go("lines-swings", at(0, 0), "down")).toEqual(at(0, 1));
    expect(go("lines-swings", at(0, 1), "down")).toEqual(at(1, 0));
    expect(go("lines-swings", at(4, 1), "on")).toEqual(at(0, 2));
    expect(go("lines-columns", at(4, 0), "down")).toEqual(at(0, 1));
    expect(go("lines-columns", at(0, 0), "right")).toBeNull();
  });

  it("start and end of a row: all columns of a swing, all swings of a fundamental, the lines under one head", () => {
    expect([go("table-swings", at(2, 3), "start"), go("table-swings", at(2, 3), "end")]).toEqual([at(2, 0), at(2, 5)]);
    expect([go("table-columns", at(2, 3), "start"), go("table-columns", at(2, 3), "end")]).toEqual([
      at(0, 3),
      at(4, 3),
    ]);
    expect([go("lines-swings", at(2, 3), "start"), go("lines-swings", at(2, 3), "end")]).toEqual([at(2, 2), at(2, 5)]);
  });

  it("on, from the first cell, visits every cell once, in every layout and shape; back is its way home", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LAYOUTS),
        fc.integer({ min: 1, max: 10 }),
        fc.integer({ min: 1, max: 15 }),
        fc.integer({ min: 0, max: 15 }),
        (layout, swings, columns, some) => {
          const made = { swings, columns, first: Math.min(some, columns) };
          const seen: string[] = [];
          let cell: CellPlace | null = at(0, 0);
          while (cell !== null && seen.length <= swings * columns) {
            seen.push(`${cell.swing} ${cell.column}`);
            const next: CellPlace | null = nextCell(layout, made, cell, "on");
            if (next !== null) expect(nextCell(layout, made, next, "back")).toEqual(cell);
            cell = next;
          }
          expect(new Set(seen).size).toBe(swings * columns);
          expect(seen.length).toBe(swings * columns);
        },
      ),
    );
  });
});
