import { describe, expect, it } from "vitest";
import { checkedCaptureSd } from "@/lib/capture/misplacement";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { buildSharper } from "@/lib/report/build-sharper";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const footLine = BUILT_IN.find((each) => each.id === "foot-line");
if (footLine === undefined) throw new Error("no such fundamental");
const rows = (camera: number) =>
  buildSharper(words, footLine, { day: 1, swing: 2, reader: 1, camera })?.table.rows.map(({ cells }) =>
    cells.join(": "),
  );

describe("what would make one session sharper", () => {
  it("parts add up as squares, those of swing and reading by their count: 1.96 √(1 + 9 + 5/5) = 6.5", () => {
    expect(buildSharper(words, footLine, { day: 1, swing: 2, reader: 1, camera: 3 })?.heading).toBe(
      "What would make one session sharper than ±\u00a07°",
    );
    // 1.96 √(1 + 9 + 5/10) = 6.4
    expect(rows(3)?.[0]).toBe("10 swings, the phone as it has stood: ±\u00a06°");
  });

  it("a phone that a check would better has two lines more, one that stands as checked none", () => {
    expect(rows(3)?.map((row) => row.split(":")[0])).toEqual([
      "10 swings, the phone as it has stood",
      "5 swings, the phone checked",
      "10 swings, the phone checked",
      "3 swings, the phone as it has stood",
    ]);
    expect(rows(checkedCaptureSd(footLine))).toHaveLength(2);
  });

  it("never says that a check would make it worse, and nothing without a budget", () => {
    const half = (row: string | undefined) => Number(/±\D*([\d.]+)/.exec(row ?? "")?.[1]);
    const all = rows(3) ?? [];
    expect(half(all[1])).toBeLessThanOrEqual(half(all[0]));
    expect(half(all[3])).toBeGreaterThanOrEqual(half(all[0]));
    expect(buildSharper(words, footLine, null)).toBeNull();
  });
});
