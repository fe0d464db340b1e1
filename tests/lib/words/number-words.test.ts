import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { wordsFor } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import {
  decimalsFor,
  sayBand,
  sayFits,
  sayLevel,
  sayNumber,
  sayShare,
  saySigned,
  saySure,
  withUnit,
} from "@/lib/words/number-words";

const words = wordsFor("en");

describe("numbers", () => {
  it("a true minus sign, and no negative zero", () => {
    expect(sayNumber(words, -3.25, 1)).toBe("−3.3");
    expect(sayNumber(words, -0.04, 1)).toBe("0.0");
    expect(saySigned(words, 2, 0)).toBe("+2");
    expect(saySigned(words, -0.01, 1)).toBe("0.0");
  });
  it("no more digits than the doubt supports: ± 2.3 one, ± 3 none", () => {
    expect(decimalsFor(2.3)).toBe(1);
    expect(decimalsFor(3)).toBe(0);
    expect(sayLevel(words, { estimate: 6.68, low95: 5.9, high95: 7.5 }, "deg")).toBe("6.7\u00a0±\u00a00.8°");
    expect(sayLevel(words, { estimate: 62.2, low95: 58, high95: 66 }, "pct-span")).toBe("62\u00a0±\u00a04\u00a0%");
  });
  it("units: degrees close up, per cent apart by a space that never breaks", () => {
    expect(withUnit(words, "3", "deg")).toBe("3°");
    expect(withUnit(words, "3", "pct-stance")).toBe("3\u00a0%");
  });
  it("bands with two edges, one, none", () => {
    expect(sayBand(words, { low: -3, high: 4 }, "deg")).toBe("−3 to 4°");
    expect(sayBand(words, { low: 2, high: null }, "deg")).toBe("at least 2°");
    expect(sayBand(words, { low: null, high: 8 }, "pct-stance")).toBe("at most 8\u00a0%");
    expect(sayBand(words, { low: null, high: null }, "deg")).toBe("no goal set");
  });
  it("a share is of 100 with its interval", () =>
    expect(sayShare(words, { estimate: 0.244, low95: 0.113, high95: 0.431 })).toBe("about 24 of 100, 11 to 43"));
});

describe("how sure", () => {
  it.each([
    [1 / 40, "about 1 in 40 that this is nothing"],
    [1 / 7.2, "about 1 in 7 that this is nothing"],
    [0.0005, "less than 1 in 1000 that this is nothing"],
    [0.72, "72 of 100 that this is nothing"],
  ])("a chance of nothing of %d reads “%s”", (chance, said) => expect(saySure(words, chance)).toBe(said));
  it("fits: e^3.807 = 45 times better", () =>
    expect(sayFits(words, Math.log(45))).toBe("These films fit a lasting change 45 times better than none."));
  it("a smaller chance never reads as a larger one", () => {
    const odds = (chance: number) =>
      Number(/1 in (\d+)/.exec(saySure(words, chance))?.[1] ?? (chance > 0.5 ? 1 : 1000));
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1, noNaN: true }),
        fc.double({ min: 1e-6, max: 1, noNaN: true }),
        (a, b) => {
          const [small, large] = a < b ? [a, b] : [b, a];
          expect(odds(small)).toBeGreaterThanOrEqual(odds(large));
        },
      ),
    );
  });
});

describe("days", () => {
  it("a day is short, with its weekday, or full", () => {
    expect(sayDay(words, "2026-09-09", "short")).toBe("9 Sep");
    expect(sayDay(words, "2026-09-09", "with-weekday")).toBe("Wed 9 Sep");
    expect(sayDay(words, "2026-09-09", "full")).toBe("Wed 9 Sep 2026");
  });
  it("a stretch says no month and no year twice", () => {
    expect(sayStretch(words, "2026-07-06", "2026-07-21")).toBe("6–21 Jul");
    expect(sayStretch(words, "2026-06-25", "2026-08-29")).toBe("25 Jun – 29 Aug");
    expect(sayStretch(words, "2025-12-20", "2026-01-04")).toBe("20 Dec 2025 – 4 Jan 2026");
    expect(sayStretch(words, "2026-07-06", "2026-07-06")).toBe("6 Jul");
  });
});
