import { describe, expect, it } from "vitest";
import { cellNote, columnOrder, type DeskColumn, type DeskModel } from "@/app/_ui/grid/desk-model";
import type { GridCell } from "@/lib/report/grid-model";

const column = (checkpointOrder: number, id = "x"): DeskColumn => ({
  fundamentalId: id,
  mark: "",
  label: id,
  unit: "degrees",
  sign: "up",
  checkpoint: "",
  checkpointOrder,
  plausible: { low: -30, high: 40 },
});
const cell = (over: Partial<GridCell> = {}): GridCell => ({
  name: "r.1.x",
  label: "x",
  value: "",
  error: "",
  asked: "no",
  confirmed: "no",
  ...over,
});

describe("what is said of a cell", () => {
  it("a value beyond what is plausible for anyone is asked about as soon as it stands: 41 of −30 to 40", () => {
    expect(cellNote(cell(), column(0), "41")).toEqual({ error: "", asked: "yes" });
    expect(cellNote(cell(), column(0), "−30,1")).toEqual({ error: "", asked: "yes" });
    for (const text of ["40", "-30", "", "n/m", "8o"])
      expect([text, cellNote(cell(), column(0), text)]).toEqual([text, null]);
  });

  it("of the value that the server knows, what the server said holds; a changed one is looked at anew", () => {
    const wrong = cell({ value: "8o", error: "no number" });
    expect(cellNote(wrong, column(0), "8o")).toEqual({ error: "no number", asked: "no" });
    expect(cellNote(wrong, column(0), "80")).toEqual({ error: "", asked: "yes" });
    expect(cellNote(wrong, column(0), "8")).toBeNull();
    expect(cellNote(cell({ value: "99" }), column(0), "99")).toBeNull();
    expect(cellNote(cell({ value: "1e3", error: "unusual", asked: "yes" }), column(0), "1e3")?.asked).toBe("yes");
  });
});

describe("columns on the screen", () => {
  const model = { columns: [3, 0, 1, 4, 0, 2].map((at, i) => column(at, String(i))), first: 3 } as unknown as DeskModel;

  it("swing by swing they stand as the model has them", () =>
    expect(columnOrder(model, "swings")).toEqual([0, 1, 2, 3, 4, 5]));

  it("by checkpoint they follow the swing, what matters now before the rest", () =>
    expect(columnOrder(model, "columns")).toEqual([1, 2, 0, 4, 5, 3]));
});
