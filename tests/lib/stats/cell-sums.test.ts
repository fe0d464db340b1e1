import { expect, it } from "vitest";
import { emptyCellSums } from "@/lib/stats/cell-sums";

it("room for three groups: three entries a column, all 0", () => {
  const sums = emptyCellSums(3);
  for (const shape of [sums.step, sums.ramp, sums.odd])
    for (const column of [shape.xx, shape.x1, shape.xy]) expect([...column]).toEqual([0, 0, 0]);
  for (const column of Object.values(sums.filter)) expect(column).toHaveLength(3);
});
