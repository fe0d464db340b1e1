import { describe, expect, it } from "vitest";
import { lookData } from "@/lib/stats/look-data";
import { mixtureCdf } from "@/lib/stats/mixture-cdf";
import type { NormalMixture } from "@/lib/stats/normal-mixture";
import { oneWayChange } from "@/lib/stats/one-way-change";
import { posteriorComponents } from "@/lib/stats/posterior-components";
import { posteriorWeights } from "@/lib/stats/posterior-weights";
import type { Series } from "@/lib/stats/series";
import { gridPoints, STEP } from "./grid-posterior";
import { madeNoise, madeSeries, SMALL_GRID, scaledNoise, seeded, simulatedSeries, transformed } from "./made-series";

const noise = madeNoise([{ daySd: 1 }, { daySd: 2, correlation: 0.3 }], 2);
const series = madeSeries([[1], [3], [2], [7], [6]]);

function narrowed(of: Series, direction: "up" | "down", least: number, model = noise) {
  const look = lookData(of, model);
  const parts = posteriorComponents(look);
  return oneWayChange(look, parts, posteriorWeights(look, parts), direction, least);
}

const meanOf = (mixture: NormalMixture): number =>
  mixture.weights.reduce((sum, weight, i) => sum + weight * (mixture.means[i] as number), 0);
const varianceOf = (mixture: NormalMixture): number =>
  mixture.weights.reduce(
    (sum, weight, i) => sum + weight * ((mixture.sds[i] as number) ** 2 + (mixture.means[i] as number) ** 2),
    0,
  ) -
  meanOf(mixture) ** 2;

describe("reference: the normal density on a grid of (level before, size), nothing integrated by formula", () => {
  const look = lookData(series, noise);
  const changed = gridPoints(look).filter((point) => point.kind !== "still");
  const all = changed.reduce((sum, point) => sum + point.weight, 0);

  it.each([
    ["up", 0],
    // A size midway between two points of the grid, so that whole cells are kept.
    ["up", 20.5 * STEP],
    ["down", 0],
  ] as const)("%s by %d at least: share, mean size, mean and sd of the level", (direction, least) => {
    const sign = direction === "up" ? 1 : -1;
    const kept = changed
      .map((point) => ({ ...point, weight: point.size === 0 && least === 0 ? point.weight / 2 : point.weight }))
      .filter((point) => sign * point.size >= least);
    const total = kept.reduce((sum, point) => sum + point.weight, 0);
    const mean = (of: (point: (typeof kept)[number]) => number) =>
      kept.reduce((sum, point) => sum + point.weight * of(point), 0) / total;
    const level = mean((point) => point.level);
    const found = narrowed(series, direction, least);
    if (found === null) throw new Error("nothing found");
    expect(found.share).toBeCloseTo(total / all, 3);
    expect(found.size).toBeCloseTo(
      mean((point) => point.size),
      1,
    );
    expect(meanOf(found.level)).toBeCloseTo(look.origin + level, 1);
    const sd = Math.sqrt(mean((point) => (point.level - level) ** 2));
    expect(Math.sqrt(varianceOf(found.level)) / sd).toBeCloseTo(1, 1);
  });
});

describe("too little and bad input", () => {
  it("a least size below 0 throws with it", () => {
    expect(() => narrowed(series, "up", -1)).toThrow("-1");
  });
  it("a least size beyond anything conceivable leaves nothing: null", () => {
    expect(narrowed(series, "up", 1e6)).toBeNull();
  });
});

describe("invariance", () => {
  it("both ways together are every change: shares add up to 1", () => {
    const [up, down] = [narrowed(series, "up", 0), narrowed(series, "down", 0)];
    expect((up?.share ?? 0) + (down?.share ?? 0)).toBeCloseTo(1, 10);
  });
  it("mirrored, up is down; 10 times the unit, 10 times the size and level", () => {
    const [one, mirrored] = [narrowed(series, "up", 2), narrowed(transformed(series, -1, 0), "down", 2)];
    const ten = narrowed(transformed(series, 10, 3), "up", 20, scaledNoise(noise, 10));
    if (one === null || mirrored === null || ten === null) throw new Error("nothing found");
    expect(mirrored.size).toBeCloseTo(-one.size, 8);
    expect(meanOf(mirrored.level)).toBeCloseTo(-meanOf(one.level), 6);
    expect(ten.size).toBeCloseTo(10 * one.size, 6);
    expect(meanOf(ten.level)).toBeCloseTo(3 + 10 * meanOf(one.level), 5);
    expect(ten.daySd).toBeCloseTo(10 * one.daySd, 6);
  });
});

describe("calibration", () => {
  it("of 400 series that stepped up at random, the level now lies below the mixture's quarter, half, three quarters as often: 4 standard errors", () => {
    const random = seeded(11);
    const below = [0, 0, 0];
    const runs = 400;
    for (let run = 0; run < runs; run++) {
      // Sizes as the model believes: half normal with sd 2 U, U the sd of one value.
      const unit = Math.sqrt(1.5 ** 2 + 1 + 9 / 5);
      const size = 2 * unit * Math.sqrt(-2 * Math.log(random())) * Math.abs(Math.cos(2 * Math.PI * random()));
      const at = 1 + Math.floor(random() * 9);
      const made = simulatedSeries({ groups: 10, level: (i) => (i >= at ? size : 0) }, random);
      const found = narrowed(made, "up", 0, SMALL_GRID);
      if (found === null) throw new Error("nothing found");
      const place = mixtureCdf(found.level, size);
      [0.25, 0.5, 0.75].forEach((quantile, i) => {
        if (place < quantile) below[i] = (below[i] as number) + 1;
      });
    }
    [0.25, 0.5, 0.75].forEach((quantile, i) => {
      // Ramps are believed in too and steps alone are drawn, which moves it by a few points: .05 allowed.
      const band = 0.05 + 4 * Math.sqrt((quantile * (1 - quantile)) / runs);
      expect(Math.abs((below[i] as number) / runs - quantile)).toBeLessThan(band);
    });
  }, 60_000);
});
