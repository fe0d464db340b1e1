import { describe, expect, it } from "vitest";
import { buildDifferencePlot } from "@/lib/report/difference-plot";
import { wordsFor } from "@/lib/words/catalogue";
import { madePair, madePairs } from "../verdict/made-rereads";
import { madeSource } from "./made-reader-error";

const words = wordsFor("en");
const plotOf = (pairs: ReturnType<typeof madePairs>) => {
  const { fundamental, error } = madeSource(pairs);
  return buildDifferencePlot(words, fundamental, pairs, error.sameFilm);
};

describe("differences by size", () => {
  it("no pair gives no plot; one pair a dot at the mean of both, without limits", () => {
    expect(plotOf([])).toBeNull();
    const plot = plotOf([madePair(80, 83)]);
    expect(plot?.dots).toEqual([{ x: 81.5, y: 3, pairs: 1 }]);
    expect([plot?.bias, plot?.limits]).toEqual([null, null]);
  });
  it("limits lie 1.96 x sqrt 2 typical errors about the bias, inside the drawing, and 0 is always on it", () => {
    const plot = plotOf(madePairs([5, 7, 5, 7]));
    // Deviations of 1: typical sqrt(4 / 6).
    const reach = 1.96 * Math.SQRT2 * Math.sqrt(4 / 6);
    expect(plot?.bias?.at).toBe(6);
    expect(plot?.limits?.[0]).toBeCloseTo(6 - reach, 12);
    expect(plot?.limits?.[1]).toBeCloseTo(6 + reach, 12);
    expect(plot?.y.from).toBeLessThanOrEqual(0);
    expect(plot?.y.to).toBeGreaterThan(6 + reach);
    expect(plot?.sentence).toContain(`between +${(6 - reach).toFixed(1)}° and +${(6 + reach).toFixed(1)}°`);
  });
  it("two pairs of one place are one dot of two, and the sentence says so", () => {
    const plot = plotOf([madePair(80, 82), madePair(70, 71), madePair(80, 82)]);
    expect(plot?.dots.map((dot) => dot.pairs)).toEqual([1, 2]);
    expect(plot?.sentence).toContain("A larger dot is several pairs.");
    expect(plotOf([madePair(80, 82), madePair(70, 71)])?.sentence).not.toContain("larger");
  });
  it("the table holds the drawing's numbers in the order of the drawing, and nobody's name or film", () => {
    const plot = plotOf([madePair(90, 88), madePair(70, 71), madePair(80, 81)]);
    expect(plot?.table.rows.map((row) => row.cells)).toEqual([
      ["70.5°", "70°", "71°", "+1°"],
      ["80.5°", "80°", "81°", "+1°"],
      ["89°", "90°", "88°", "−2°"],
    ]);
    expect(JSON.stringify(plot)).not.toContain("Wren");
  });
});
