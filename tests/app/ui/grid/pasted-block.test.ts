import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { landBlock } from "@/app/_ui/grid/land-block";
import { pastedBlock } from "@/app/_ui/grid/pasted-block";

describe("what was copied", () => {
  it("cells are parted by tabs and ends of line of every kind; the one behind the last row makes no row", () => {
    for (const end of ["\n", "\r\n", "\r"])
      expect(pastedBlock(`1,5\t−3${end} 88 \t${end}`)).toEqual([
        ["1,5", "−3"],
        ["88", ""],
      ]);
  });

  it("a cell in quotation marks may hold tabs, lines and marks; a mark within a cell is a mark", () => {
    expect(pastedBlock('"a\tb"\t"say ""no"""\n7"\t"c\nd"')).toEqual([
      ["a\tb", 'say "no"'],
      ['7"', "c\nd"],
    ]);
  });

  it("a single cell is no block, with or without its end of line", () => {
    expect([pastedBlock("88"), pastedBlock("88\r\n"), pastedBlock("")]).toEqual([null, null, null]);
  });

  it("any block of plain cells comes back as it was copied", () => {
    const cell = fc.stringMatching(/^[0-9a-z.,−-]{0,6}$/);
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 6 }), { minLength: 1, maxLength: 6 }), (rows) => {
        const text = `${rows.map((row) => row.join("\t")).join("\r\n")}\r\n`;
        expect(pastedBlock(text)).toEqual(rows);
      }),
    );
  });

  it("no text whatever makes it throw or lose a sign that is no space, tab, end of line or quotation mark", () => {
    const kept = (text: string) => text.replace(/[\s"\ufeff]/g, "");
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom("\t", "\n", "\r", '"', "8", "−", " ", "ü") }), (text) => {
        const block = pastedBlock(text);
        expect(block === null ? kept(text) : kept(block.flat().join(""))).toBe(kept(text));
      }),
      { numRuns: 2000 },
    );
  });
});

describe("how a block lands", () => {
  const empty = () => "";
  const room = { line: 1, place: 2, lines: 5, places: 4 };

  it("from the cell on, and blank cells leave what stands", () => {
    const landed = landBlock(
      [
        ["1", ""],
        ["", "4"],
      ],
      room,
      (line, place) => (line === 2 && place === 3 ? "9" : ""),
    );
    expect(landed).toEqual({
      kind: "landed",
      cells: [
        { line: 1, place: 2, text: "1" },
        { line: 2, place: 3, text: "4" },
      ],
      changed: 1,
      blank: 2,
    });
  });

  it("what stood there already is not counted as changed", () => {
    expect(landBlock([["1", "2"]], room, () => " 1 ")).toMatchObject({ changed: 1 });
  });

  it("a block that reaches beyond the table is refused whole, with how large it is", () => {
    expect(landBlock([["1", "2", "3"]], room, empty)).toEqual({ kind: "overflow", lines: 1, places: 3 });
    expect(landBlock([["1"], ["2"], ["3"], ["4"], ["5"]], room, empty)).toEqual({
      kind: "overflow",
      lines: 5,
      places: 1,
    });
  });

  it("blank rows and columns at its end need no room; a block of blanks changes nothing", () => {
    expect(landBlock([["1", "2", "", ""], ["", ""], ["", ""], ["", ""], [""]], room, empty)).toMatchObject({
      kind: "landed",
      blank: 0,
    });
    expect(landBlock([["", ""], [""]], room, empty)).toEqual({ kind: "blank" });
  });

  it("no cell lands outside, none is lost: as many land as are not blank, or none at all", () => {
    const cell = fc.constantFrom("", "1", "−2,5", "n/m");
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { maxLength: 7 }), { minLength: 1, maxLength: 7 }),
        fc.record({ line: fc.nat(4), place: fc.nat(3) }),
        (block, from) => {
          const landed = landBlock(block, { ...from, lines: 5, places: 4 }, empty);
          const full = block.flat().filter((text) => text !== "").length;
          if (landed.kind !== "landed") return;
          expect(landed.cells.length).toBe(full);
          expect(landed.cells.every(({ line, place }) => line < 5 && place < 4)).toBe(true);
        },
      ),
    );
  });
});
